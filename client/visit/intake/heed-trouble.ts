import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import {
  dangerTold,
  hazardAboutTold,
  resetsOftenTold,
  resetTold,
  type ToldDanger,
} from '../../../grammar/vocabulary/danger-signs.ts';
import { tellsOfDrive, tellsOfPropane } from '../../../grammar/vocabulary/drive-signs.ts';
import { overcurrentTold } from '../../../grammar/vocabulary/fuse-signs.ts';
import { deniesInjury, troublesIn } from '../../../grammar/vocabulary/trouble-signs.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { GATE_WORDS } from '../../words/talk/caution-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { trippedAt } from '../rules/after-trip.ts';
import { checkPart } from '../rules/check-part.ts';
import { IN_PROOF, zonesFedBy } from '../rules/isolation.ts';
import { isUnclear } from '../rules/power-may-be-back.ts';
import { endProofs } from './end-proofs.ts';
import { endReached } from './heed-power.ts';
import { heedReset } from './heed-return.ts';
import { takeInjury } from './take-report.ts';
import { takeNameplate, takePart } from './take-work.ts';

/**
 * Heeds what words that were not understood can tell beside power: that the proof was none, that a fuse blew or a winding
 * is grounded, that somebody is hurt. Returns whether nothing else is to be made of them: somebody is hurt, or a size was refused.
 */
export function heedTrouble(turn: Turn, utterance: HeardUtterance): boolean {
  const { accepted, understanding } = utterance;
  if (!accepted || !isUnclear(utterance)) return false;
  const troubles = troublesIn(understanding.heard);
  if (troubles.has('proof')) doubtProofs(turn, understanding.heard);
  gateWhatIsTold(turn, understanding.heard);
  // A reading that is asked about is warned of by its own number.
  if (understanding.meaning.kind !== 'reading') tellDanger(turn, understanding.heard);
  if (hazardAboutTold(understanding.heard)) turn.warn(SAY.stayClear, 'outdoor-load');
  if (resetTold(understanding.heard)) {
    if (trippedAt(turn.context) === undefined && resetsOftenTold(understanding.heard))
      turn.warn(DANGER_WORDS['tripped-breaker'], 'outdoor-load', 'tripped-breaker');
    countReset(turn, understanding.heard);
  }
  if (!troubles.has('person')) return refusesSize(turn, understanding.heard);
  endReached(turn, ZONES, BECAUSE.maybeBack(understanding.heard));
  takeInjury(turn);
  return true;
}

/** Somebody is hurt: told in a sentence of its own, or in words that were not understood. */
export function tellsOfInjury(utterance: HeardUtterance): boolean {
  const { accepted, understanding } = utterance;
  const { meaning, heard } = understanding;
  if (!accepted) return false;
  if (meaning.kind === 'report' && meaning.report.type === 'injury') return !deniesInjury(heard);
  return isUnclear(utterance) && troublesIn(heard).has('person');
}

/** What was measured may not have been: it is to be proved anew, behind the same lock. */
function doubtProofs(turn: Turn, heard: string): void {
  const zones = ZONES.filter((zone) => IN_PROOF.includes(turn.context.energy[zone]));
  const [zone] = zones;
  if (zone === undefined) return;
  turn.warn(SAY.proofDoubted, zone);
  endProofs(turn, zones, 'doubted', BECAUSE.maybeBack(heard));
}

/** A drive of its own, or what burns readily in the circuit, told in words that are no line of a plate. */
function gateWhatIsTold(turn: Turn, heard: string): void {
  if (turn.context.gate !== undefined) return;
  if (tellsOfDrive(heard)) takeNameplate(turn, { kind: 'nameplate', field: 'compressor-drive', value: 'inverter' });
  if (!tellsOfPropane(heard)) return;
  turn.warn(GATE_WORDS['A3-refrigerant'], 'outdoor-load');
}

/** A fuse or breaker too large for the unit is refused aloud, however its size was told; any other is nothing to stop for. */
function refusesSize(turn: Turn, heard: string): boolean {
  const told = overcurrentTold(heard);
  if (told === undefined) return false;
  const part = { kind: 'part', part: told.part, ratings: { amps: told.amps } } as const;
  const { unit, plate } = turn.context;
  if (!checkPart(part.part, part.ratings, unit, plate).some(({ weight }) => weight === 'refuse')) return false;
  takePart(turn, part, false);
  return true;
}

const DANGER_WORDS: Readonly<Record<ToldDanger, string>> = {
  'blown-fuse': SAY.windingsFirst.fuse,
  'tripped-breaker': SAY.windingsFirst.breaker,
  'grounded-winding': SAY.grounded,
};

function tellDanger(turn: Turn, heard: string): void {
  const danger = dangerTold(heard);
  if (danger === undefined) return;
  const words = DANGER_WORDS[danger];
  turn.warn(words, 'outdoor-load', danger);
}

/** A breaker that had tripped was switched on once more: it counts as a reset, and power as back behind it. */
function countReset(turn: Turn, heard: string): void {
  if (trippedAt(turn.context) === undefined) return;
  turn.record({ type: 'switch.reported', place: 'panel', state: 'closed' });
  endReached(turn, zonesFedBy('panel', turn.context), BECAUSE.maybeBack(heard), 'switch');
  heedReset(turn, 'panel');
}

import type { Deed } from '../../../grammar/visit/events.ts';
import { coversOff } from '../../../grammar/visit/standing.ts';
import type { DeedId } from '../../../grammar/vocabulary/deeds.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { deedWords } from '../../words/things/deed-words.ts';
import type { Turn } from '../chart/turn.ts';
import { handsAtDeed } from '../rules/hands-at.ts';
import { zonesFedBy } from '../rules/isolation.ts';
import { endReached } from './heed-power.ts';
import { followCircuitDeed } from './take-refrigerant.ts';
import { notProvenDead, sayUnproven, tellUnproven } from './tell-unproven.ts';

const COVERS_ON = 'energy.covers-on';

/** A part taken out or put back, a cover, a deed by hand: recorded, warned of at once, read back. */
export function takeDeed(turn: Turn, deed: Deed): void {
  const steps = followCover(turn, deed);
  turn.record({ type: 'deed.reported', deed, ...(steps === undefined ? {} : { steps }) });
  tellUnproven(turn, deedWords(deed), handsAtDeed(deed));
  warnOfDeed(turn, deed);
  // Whoever puts a fuse back closes the circuit behind the disconnect.
  if (deed.type === 'part-moved' && deed.part === 'fuse' && deed.to === 'in') {
    endReached(turn, zonesFedBy('outdoor', turn.context), BECAUSE.fuseBack);
  }
  turn.say('readback', SAY.deed(deed));
  followCircuitDeed(turn, deed);
}

/** Taken back: it was not done, and the question of the covers stands as it stood before. */
export function takeBackDeed(turn: Turn): void {
  const last = turn.context.deeds.at(-1);
  if (last === undefined) return;
  turn.record({ type: 'deed.withdrawn', deed: last.deed });
  if (last.steps === 'settled') turn.record({ type: 'steps.reopened', steps: [COVERS_ON] });
  if (last.steps === 'reopened') turn.record({ type: 'steps.settled', steps: [COVERS_ON] });
  turn.say('readback', SAY.deedBack(last.deed));
}

/** A cover that comes off asks for covers again; the cabinet closed, with none left off, answers it. */
function followCover(turn: Turn, deed: Deed): 'settled' | 'reopened' | undefined {
  if (deed.type !== 'cover') return undefined;
  const isSettled = turn.context.settled.includes(COVERS_ON);
  if (deed.state === 'off') {
    if (isSettled) turn.record({ type: 'steps.reopened', steps: [COVERS_ON] });
    return isSettled ? 'reopened' : undefined;
  }
  const left = coversOff(turn.context).filter((cover) => cover !== deed.cover);
  if (isSettled || left.length > 0 || deed.cover !== 'unit') return undefined;
  turn.record({ type: 'steps.settled', steps: [COVERS_ON] });
  return 'settled';
}

/** What is said of a deed when it is told; `nothing`: elsewhere, or nothing. */
const WARNED_OF: Readonly<Record<DeedId, 'nothing' | { readonly words: string; readonly whileFed: boolean }>> = {
  'contactor-pressed': { words: SAY.armature, whileFed: false },
  'switch-bypassed': { words: SAY.bypassed, whileFed: false },
  'shell-touched': { words: SAY.shellBurns, whileFed: true },
  'bypass-off': 'nothing',
  'flame-lit': 'nothing',
  'vacuum-on': 'nothing',
  'vacuum-off': 'nothing',
  'vacuum-off-nitrogen': 'nothing',
  'compressor-leads-off': 'nothing',
  'compressor-leads-on': 'nothing',
  'fan-leads-off': 'nothing',
  'fan-leads-on': 'nothing',
  'capacitor-leads-off': 'nothing',
  'capacitor-leads-on': 'nothing',
  'blower-leads-off': 'nothing',
  'blower-leads-on': 'nothing',
};

/** What is asked back may be so: it is warned of before the question. */
export function warnBeforeAsking(turn: Turn, deed: Deed, at: readonly ZoneId[] = handsAtDeed(deed)): void {
  sayUnproven(turn, at);
  warnOfDeed(turn, deed);
}

function warnOfDeed(turn: Turn, deed: Deed): void {
  const warned = deed.type === 'deed' ? WARNED_OF[deed.deed] : 'nothing';
  if (warned !== 'nothing') warnByHand(turn, warned.words, warned.whileFed);
}

/** @param whileFed only where the outdoor unit is not proven dead */
export function warnByHand(turn: Turn, words: string, whileFed: boolean): void {
  if (whileFed && notProvenDead(turn, ['outdoor-load']).length === 0) return;
  turn.warn(words, 'outdoor-load');
}

import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF, placesOpening, TAKEN_OFF } from '../rules/isolation.ts';
import { locksTold, powerMayBeBack, tellsOfPower } from '../rules/power-may-be-back.ts';
import { untriedOutdoors } from '../rules/proof-ground.ts';
import { endProofs } from './end-proofs.ts';
import { heedReturn, metNow } from './heed-return.ts';

/**
 * Ends at once whatever the words may have ended, before any question is asked of them. What was reported of the
 * switches there is no longer believed: getting the proof back costs a proof.
 */
export function heedPower(turn: Turn, utterance: HeardUtterance): void {
  const reached = powerMayBeBack(utterance, turn.context);
  const { heard } = utterance.understanding;
  endReached(turn, reached, BECAUSE.maybeBack(heard), locksTold(heard));
  if (tellsOfPower(heard)) answerPowerOn(turn, reached);
}

/** Where power was just asked for, that is what the words tell: the switches there are closed. */
function answerPowerOn(turn: Turn, reached: readonly ZoneId[]): void {
  const { step, toldOpen } = turn.context;
  if (step?.ask.kind !== 'action' || step.ask.done !== 'power-on') return;
  if (step.zone === 'none' || !reached.includes(step.zone)) return;
  for (const place of placesOpening([step.zone])) {
    if (toldOpen.includes(place)) turn.record({ type: 'switch.reported', place, state: 'closed' });
  }
}

type LocksTold = ReturnType<typeof locksTold>;

/**
 * Power may have come to these zones: what was taken off there counts as live, and what power meets there is named.
 *
 * @param told what the words may mean of locks, which are no news then
 */
export function endReached(turn: Turn, reached: readonly ZoneId[], why: string, told: LocksTold = 'none'): void {
  const { energy } = turn.context;
  const met = metNow(turn, reached, told === 'lock' ? 'every' : 'none');
  const fed = reached.filter((zone) => energy[zone] !== 'live');
  const zones = reached.filter((zone) => TAKEN_OFF.includes(energy[zone]));
  if (zones.length > 0) endTakenOff(turn, zones, why, told === 'lock');
  if (reached.includes('disconnect-line')) doubtUntried(turn, why);
  if (fed.length > 0) heedReturn(turn, fed, met);
}

/** Proven without a live leg: now there may be one to read its ground with. */
export function doubtUntried(turn: Turn, why: string): void {
  const untried = untriedOutdoors(turn.context);
  if (untried.length === 0) return;
  turn.warn(SAY.maybeBack(untried, untried), untried[0]);
  endProofs(turn, untried, 'doubted', why);
}

function endTakenOff(turn: Turn, zones: readonly ZoneId[], why: string, lockOff: boolean): void {
  const { energy } = turn.context;
  const words = SAY.maybeBack(
    zones,
    zones.filter((zone) => IN_PROOF.includes(energy[zone])),
  );
  for (const place of placesOpening(zones))
    turn.record({ type: 'switch.reported', place, state: 'unknown', ...(lockOff ? { lockOff } : {}) });
  turn.warn(words, zones[0]);
  endProofs(turn, zones, 'live', why);
}

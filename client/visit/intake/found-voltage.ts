import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { placesOpening, reachedByVoltage, TAKEN_OFF } from '../rules/isolation.ts';
import { endProofs } from './end-proofs.ts';

/** A place in words, where the points of a voltage are not known. */
export interface WhereFound {
  readonly zone: ZoneId;
  readonly at: readonly PointId[];
}

/**
 * Voltage where there should be none: said first, every proof that it can touch ends, what was reported of the switches
 * there is no longer believed, and the talk turns to what feeds it.
 */
export function foundVoltage(turn: Turn, { zone, at }: WhereFound, why: string): void {
  const words = SAY.handsOff(zone, at);
  turn.warn(words, zone);
  const { energy, isolation } = turn.context;
  const touched = reachedByVoltage(zone, turn.context).filter((one) => one === zone || TAKEN_OFF.includes(energy[one]));
  endProofs(turn, touched, 'live', why);
  for (const place of placesOpening([zone])) {
    if (isolation[place] !== 'unknown') turn.record({ type: 'switch.reported', place, state: 'unknown' });
  }
  turn.record({ type: 'search.began', zone, at });
  turn.raise({ type: 'step.set-aside' });
}

/** Whether a voltage at a zone is where none should be: there, or in what is live together with it. */
export function isWhereOff(turn: Pick<Turn, 'context'>, zone: ZoneId): boolean {
  const { energy, toldOpen } = turn.context;
  if (placesOpening([zone]).some((place) => toldOpen.includes(place))) return true;
  return reachedByVoltage(zone, turn.context).some((one) => TAKEN_OFF.includes(energy[one]));
}

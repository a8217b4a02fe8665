import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Suspect } from '../diagnosis.ts';
import { FAULT_MODELS } from '../faults/fault-models.ts';
import type { Ranked } from './choose-next.ts';

/** Below this a leader is no finding, however dear the next test is. */
const LEAST_PROBABILITY = 0.8;

/**
 * Whether the best test costs more than the doubt that it would take away: what the leader's being wrong costs, times
 * the share of that doubt settled in a minute (after Heckerman, Breese and Rommelse, 1995).
 */
export function isNotWorthMore(suspects: readonly Suspect[], best: Ranked | undefined): boolean {
  const leader = suspects[0];
  if (leader === undefined || leader.probability < LEAST_PROBABILITY) return false;
  // Nothing is left that tells more.
  if (best === undefined) return true;
  const entropy = suspects.reduce((sum, { probability: p }) => sum - (p > 0 ? p * Math.log(p) : 0), 0);
  const lost = FAULT_MODELS[leader.fault].lostMinutes * (1 - leader.probability);
  return (best.worth / entropy) * lost < 1;
}

/**
 * Planned minutes of a search, with those of the best test, after which it ends: where nobody of the list leads, or
 * whoever leads is one of many, and where somebody does (ours). What tests promise by a model that the unit does not
 * follow they do not keep; on two simulators that are not ours the truth came to lead in one or two of a hundred visits
 * after that.
 */
const PATIENCE = { unnamed: 26, named: 33 } as const;
/** A leader below this is one of many (ours). */
const FAINT = 0.15;

/** Whether so many minutes of tests are more than a search is worth. */
export function isOutOfPatience(minutes: number, { fault, probability }: Suspect): boolean {
  const isUnnamed = fault === 'something-else' || probability < FAINT;
  return minutes > PATIENCE[isUnnamed ? 'unnamed' : 'named'];
}

/** Where a search ends, a leader below this has its row not read to the end: it is mostly another (ours). */
export const WORTH_PROVING = 0.2;

/** A reading taken at the wrong place fits the wrong fault by itself: strays are more than they look (our figure). */
const STRAYS_UNSEEN = 1.5;

/**
 * What reading once more saves, less what it costs, in minutes.
 * @param stray how often the reading is a stray one, as far as the others show it
 * @param loss by how much the leader would then be less probable
 */
export function worthOfReadingAgain(leader: FaultId, stray: number, loss: number, minutes: number): number {
  return STRAYS_UNSEEN * stray * loss * FAULT_MODELS[leader].lostMinutes - minutes;
}

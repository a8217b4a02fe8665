import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Suspect } from '../diagnosis.ts';
import type { Ranked } from './choose-next.ts';

/**
 * What it costs to mend a fault that was not the cause, as minutes: the work, the part, the next visit and the trust
 * (our figures). What is only cleaned or reset costs least, a compressor most.
 */
const LOST_MINUTES: Readonly<Partial<Record<FaultId, number>>> = {
  'filter-dirty': 90,
  'condenser-dirty': 135,
  'indoor-coil-iced': 180,
  'low-indoor-air': 180,
  'thermostat-not-calling': 90,
  'low-charge': 540,
  overcharge: 360,
  'liquid-restriction': 900,
  'non-condensables': 900,
  'leaking-valves': 1800,
  'reversing-valve-stuck': 1800,
  'compressor-run-winding-open': 1800,
  'compressor-start-winding-open': 1800,
  'compressor-grounded': 1800,
  'compressor-overload-open': 1800,
  'compressor-seized': 1800,
};
const LOST_MINUTES_USUAL = 360;
const lostBy = (fault: FaultId): number => LOST_MINUTES[fault] ?? LOST_MINUTES_USUAL;

/** Below this a leader is no finding, however dear the next test is. */
const LEAST_PROBABILITY = 0.8;

/**
 * Whether the best test costs more than the doubt that it would take away: what the leader's being wrong costs, times
 * the share of that doubt settled in a minute (after Heckerman, Breese and Rommelse, 1995).
 */
export function isNotWorthMore(suspects: readonly Suspect[], best: Ranked | undefined): boolean {
  const leader = suspects[0];
  if (leader === undefined || best === undefined || leader.probability < LEAST_PROBABILITY) return false;
  const entropy = suspects.reduce((sum, { probability: p }) => sum - (p > 0 ? p * Math.log(p) : 0), 0);
  const lost = lostBy(leader.fault) * (1 - leader.probability);
  return (best.worth / entropy) * lost < 1;
}

/** A reading taken at the wrong place fits the wrong fault by itself: strays are more than they look (our figure). */
const STRAYS_UNSEEN = 1.5;

/**
 * What reading once more saves, less what it costs, in minutes.
 * @param stray how often the reading is a stray one, as far as the others show it
 * @param loss by how much the leader would then be less probable
 */
export function worthOfReadingAgain(leader: FaultId, stray: number, loss: number, minutes: number): number {
  return STRAYS_UNSEEN * stray * loss * lostBy(leader) - minutes;
}

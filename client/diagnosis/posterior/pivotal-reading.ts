import type { FaultTable } from '../table/fault-table.ts';
import type { Taken } from './take-readings.ts';
import type { Posterior } from './weigh-particles.ts';

/** Without a pivotal reading its leader would not even be the likelier half. */
const HALF = 0.5;

/** Probability of a fault had the reading not been taken. */
function without(table: FaultTable, posterior: Posterior, factor: Float64Array, fault: number): number {
  let all = 0;
  let own = 0;
  for (let p = 0; p < factor.length; p += 1) {
    const weight = posterior.weight[p]! / factor[p]!;
    all += weight;
    if (table.faultOf[p] === fault) own += weight;
  }
  return own / all;
}

/**
 * The one reading, taken once, on which the leading fault rests most: worth a second look before a part is condemned.
 * Undefined when none is, or when one that was taken twice already carries the leader.
 */
export function pivotalReading(table: FaultTable, posterior: Posterior, leader: number): Taken | undefined {
  let pivot: Taken | undefined;
  let least = HALF;
  for (const [reading, factor] of posterior.factor) {
    const share = without(table, posterior, factor, leader);
    if (share >= HALF) continue;
    if (reading.times > 1) return undefined;
    if (share < least) {
      least = share;
      pivot = reading;
    }
  }
  return pivot;
}

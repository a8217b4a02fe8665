import type { FaultTable } from '../table/fault-table.ts';
import { TEST_MODELS } from '../tests/test-models.ts';
import type { Standing, Taken } from './take-readings.ts';
import { type Posterior, weighParticles } from './weigh-particles.ts';

/** Without a pivotal reading its leader would be far from sure. */
const FAR_FROM_SURE = 0.7;
/** A test that was read so often settles nothing by one reading more. */
const MOST_READINGS = 3;

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

/** The same for a condition, which carries no weight itself but moves what is expected of others. */
function withoutCondition(table: FaultTable, standing: Standing, condition: Taken, fault: number): number {
  const all = standing.all.filter((r) => r !== condition);
  const taken = new Map(all.map((r) => [r.test, r]));
  return weighParticles(table, { ...standing, all, taken }).fault[fault]!;
}

/**
 * The one reading, taken once, on which the leading fault rests most: worth a second look before a part is condemned.
 * Undefined when none is, or when one that was taken twice already carries the leader.
 */
export function pivotalReading(
  table: FaultTable,
  posterior: Posterior,
  standing: Standing,
  leader: number,
): Taken | undefined {
  let pivot: Taken | undefined;
  let least = FAR_FROM_SURE;
  for (const reading of standing.all) {
    const factor = posterior.factor.get(reading);
    const condition = TEST_MODELS[reading.test].measure.kind === 'condition';
    if (!factor && !(condition && reading.times === 1)) continue;
    const share = factor
      ? without(table, posterior, factor, leader)
      : withoutCondition(table, standing, reading, leader);
    if (share >= FAR_FROM_SURE) continue;
    if (reading.times > 1) return undefined;
    const readings = standing.all.filter((r) => r.test === reading.test).reduce((sum, r) => sum + r.times, 0);
    if (share < least && readings < MOST_READINGS) {
      least = share;
      pivot = reading;
    }
  }
  return pivot;
}

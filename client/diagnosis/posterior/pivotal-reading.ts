import type { Standing, Taken } from './take-readings.ts';
import type { Posterior } from './weigh-particles.ts';

/** A test that was read so often settles nothing by one reading more. */
const MOST_READINGS = 3;

/**
 * The one reading, taken once, that is most worth a second look before a part is condemned. Undefined when none is.
 * @param worth what reading it again is worth less what it costs: given how often it is a stray one, and by how much
 *   the leader would then be less probable
 */
export function pivotalReading(
  posterior: Posterior,
  standing: Standing,
  leader: number,
  worth: (reading: Taken, stray: number, loss: number) => number,
): Taken | undefined {
  let pivot: Taken | undefined;
  let most = 0;
  for (const [reading, stray] of posterior.stray) {
    const readings = standing.all.filter((r) => r.test === reading.test).reduce((sum, r) => sum + r.times, 0);
    // Not even a leader that is nothing without it would be worth it.
    if (reading.times > 1 || readings >= MOST_READINGS || worth(reading, stray, 1) <= most) continue;
    const loss = posterior.fault[leader]! - posterior.without(reading, leader);
    const gain = worth(reading, stray, loss);
    if (gain <= most) continue;
    most = gain;
    pivot = reading;
  }
  return pivot;
}

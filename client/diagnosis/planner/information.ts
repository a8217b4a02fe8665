import type { Posterior } from '../posterior/weigh-particles.ts';
import { STRAY } from '../posterior/weigh-particles.ts';
import type { Column, FaultTable } from '../table/fault-table.ts';

/** Faults and particles that still matter; the rest is left out of the sums. */
export interface Alive {
  readonly particles: readonly number[];
  /** Index into `share` for each fault of the table, −1 when it no longer matters. */
  readonly slot: Int16Array;
  readonly share: readonly number[];
  /** How far the draws of a fault speak for it: few that matter speak little. */
  readonly trust: readonly number[];
  /** What is not known yet, nats. */
  readonly entropy: number;
}

export function alive(table: FaultTable, posterior: Posterior): Alive {
  const open = table.faults.indexOf('something-else');
  const slot = new Int16Array(table.faults.length).fill(-1);
  const share: number[] = [];
  for (let f = 0; f < slot.length; f += 1) {
    if (f === open || posterior.fault[f]! < 1e-4) continue;
    slot[f] = share.length;
    share.push(posterior.fault[f]!);
  }
  const squares = share.map(() => 0);
  const particles: number[] = [];
  for (let p = 0; p < posterior.weight.length; p += 1) {
    const s = slot[table.faultOf[p]!]!;
    if (s < 0) continue;
    squares[s] = squares[s]! + posterior.weight[p]! ** 2;
    if (posterior.weight[p]! > 1e-7) particles.push(p);
  }
  const trust = share.map((mass, s) => effective(mass, squares[s]!));
  const whole = share.reduce((a, b) => a + b, 0);
  const entropy = share.reduce((sum, x) => sum + entropyTerm(x / whole), 0);
  return { particles, slot, share, trust, entropy };
}

/** n / (n + ½) for the effective number of draws n. */
function effective(mass: number, squares: number): number {
  const draws = (mass * mass) / squares;
  return draws / (draws + 0.5);
}

const entropyTerm = (x: number) => (x > 0 ? -x * Math.log(x) : 0);

/** Outcome shares by fault: `joint[slot · outcomes + o]`. */
function jointOutcomes(table: FaultTable, posterior: Posterior, live: Alive, column: Column): [Float64Array, number] {
  const outcomes = column.kind === 'look' ? column.answers : column.bins;
  const joint = new Float64Array(live.share.length * outcomes);
  for (const p of live.particles) {
    const base = live.slot[table.faultOf[p]!]! * outcomes;
    const w = posterior.weight[p]!;
    if (column.kind === 'look') {
      for (let o = 0; o < outcomes; o += 1) joint[base + o] = joint[base + o]! + w * column.chance[p * outcomes + o]!;
      continue;
    }
    const first = base + column.firstBin[p]!;
    for (let o = 0; o < 3; o += 1) joint[first + o] = joint[first + o]! + w * column.share[p * 3 + o]!;
  }
  return [joint, outcomes];
}

/** Outcome shares over all faults together. */
function pool(joint: Float64Array, share: readonly number[], outcomes: number): Float64Array {
  const pooled = new Float64Array(outcomes);
  const mass = share.reduce((a, b) => a + b, 0);
  for (let i = 0; i < joint.length; i += 1) pooled[i % outcomes] = pooled[i % outcomes]! + joint[i]! / mass;
  return pooled;
}

/** Mutual information between the fault and the outcome of a test, nats. */
export function informationOf(table: FaultTable, posterior: Posterior, live: Alive, column: Column): number {
  const [joint, outcomes] = jointOutcomes(table, posterior, live, column);
  const all = new Float64Array(outcomes);
  const pooled = pool(joint, live.share, outcomes);
  let mass = 0;
  let within = 0;
  for (let s = 0; s < live.share.length; s += 1) {
    let entropy = 0;
    const share = live.share[s]!;
    for (let o = 0; o < outcomes; o += 1) {
      const own = live.trust[s]! * (joint[s * outcomes + o]! / share) + (1 - live.trust[s]!) * pooled[o]!;
      const given = (1 - STRAY) * own + STRAY / outcomes;
      entropy += entropyTerm(given);
      all[o] = all[o]! + share * given;
    }
    within += share * entropy;
    mass += share;
  }
  let total = 0;
  for (let o = 0; o < outcomes; o += 1) total += entropyTerm(all[o]! / mass);
  return Math.max(0, total - within / mass);
}

import { STRAY } from '../posterior/misread-bases.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import type { Column, FaultTable, TestColumn } from '../table/fault-table.ts';

/** A fault that still matters, with the draws of it that do. */
interface LiveFault {
  readonly fault: number;
  readonly share: number;
  /** Draws by their number within the fault, each with its share of the fault. */
  readonly draws: Uint16Array;
  readonly drawShare: Float64Array;
  /** How far its draws speak for it: few that matter speak little. */
  readonly trust: number;
  /** Share of each kind of unit within the fault. */
  readonly kinds: Float64Array;
}

/** What still matters; the rest is left out of the sums. */
export interface Alive {
  readonly faults: readonly LiveFault[];
  /** What is not known yet, nats. */
  readonly entropy: number;
}

const LEAST_SHARE = 2e-4;

/** The faults and draws that still matter. */
export function alive(table: FaultTable, posterior: Posterior): Alive {
  const open = table.faults.indexOf('something-else');
  const faults: LiveFault[] = [];
  for (let f = 0; f < table.faults.length; f += 1) {
    if (f !== open && posterior.fault[f]! >= LEAST_SHARE) faults.push(liveFault(table, posterior, f));
  }
  const whole = faults.reduce((sum, { share }) => sum + share, 0);
  return { faults, entropy: faults.reduce((sum, { share }) => sum + entropyTerm(share / whole), 0) };
}

function liveFault(table: FaultTable, { weight, fault }: Posterior, f: number): LiveFault {
  const share = fault[f]!;
  const first = table.first[f]!;
  const own = weight.subarray(first, table.first[f + 1]!);
  const kinds = new Float64Array(table.kinds);
  let squares = 0;
  for (let k = 0; k < own.length; k += 1) {
    const kind = table.kind[first + k]!;
    kinds[kind] = kinds[kind]! + own[k]! / share;
    squares += own[k]! * own[k]!;
  }
  const effective = (share * share) / squares;
  return { fault: f, share, ...planningDraws(own, share), trust: effective / (effective + 1.5), kinds };
}

/** Draws that stand for a fault in planning: so many equal steps along its weights, the same draw once. */
const PLANNING_DRAWS = 32;

function planningDraws(own: Float64Array, share: number): Pick<LiveFault, 'draws' | 'drawShare'> {
  const draws = new Uint16Array(PLANNING_DRAWS);
  const drawShare = new Float64Array(PLANNING_DRAWS);
  const step = share / PLANNING_DRAWS;
  let live = 0;
  let passed = 0;
  let next = 0.5 * step;
  for (let k = 0; k < own.length && live < PLANNING_DRAWS; k += 1) {
    passed += own[k]!;
    const steps = Math.ceil((passed - next) / step);
    if (steps <= 0) continue;
    draws[live] = k;
    drawShare[live] = steps / PLANNING_DRAWS;
    live += 1;
    next += steps * step;
  }
  return { draws: draws.subarray(0, live), drawShare: drawShare.subarray(0, live) };
}

const entropyTerm = (x: number) => (x > 0 ? -x * Math.log(x) : 0);

const outcomesOf = (column: Column) => (column.kind === 'look' ? column.answers : column.bins);

/** Adds the chances of each outcome under the draws of a fault, which begin at `start` in the column. */
function addDraws(column: Column, start: number, { draws, drawShare }: LiveFault, into: Float64Array): void {
  if (column.kind === 'look') {
    const { answers, chance } = column;
    for (let i = 0; i < draws.length; i += 1) {
      const at = (start + draws[i]!) * answers;
      for (let o = 0; o < answers; o += 1) into[o] = into[o]! + drawShare[i]! * chance[at + o]!;
    }
    return;
  }
  const { firstBin, share } = column;
  for (let i = 0; i < draws.length; i += 1) {
    const d = start + draws[i]!;
    const w = drawShare[i]!;
    const bin = firstBin[d]!;
    into[bin] = into[bin]! + w * share[d * 3]!;
    into[bin + 1] = into[bin + 1]! + w * share[d * 3 + 1]!;
    into[bin + 2] = into[bin + 2]! + w * share[d * 3 + 2]!;
  }
}

/** Chance of each outcome for the healthy unit, kind by kind. */
function healthyOutcomes(table: FaultTable, { column, start }: TestColumn): Float64Array {
  const outcomes = outcomesOf(column);
  const sum = new Float64Array(table.kinds * outcomes);
  const count = new Float64Array(table.kinds);
  const first = table.first[table.healthy]!;
  const one = { draws: new Uint16Array(1), drawShare: Float64Array.of(1) } as unknown as LiveFault;
  for (let p = first; p < table.first[table.healthy + 1]!; p += 1) {
    const k = table.kind[p]!;
    count[k] = count[k]! + 1;
    addDraws(column, start[table.healthy]! + p - first, one, sum.subarray(k * outcomes, (k + 1) * outcomes));
  }
  return sum.map((x, i) => x / Math.max(1, count[Math.floor(i / outcomes)]!));
}

const healthyCache = new WeakMap<TestColumn, Float64Array>();

function cachedHealthy(table: FaultTable, entry: TestColumn): Float64Array {
  let found = healthyCache.get(entry);
  if (!found) {
    found = healthyOutcomes(table, entry);
    healthyCache.set(entry, found);
  }
  return found;
}

function entropyOf(chances: Float64Array): number {
  const floor = STRAY / chances.length;
  let sum = 0;
  for (let o = 0; o < chances.length; o += 1) {
    const x = (1 - STRAY) * chances[o]! + floor;
    sum -= x * Math.log(x);
  }
  return sum;
}

/** Faults that read alike, with the chance of each outcome under them. */
interface Group {
  readonly share: number;
  readonly trust: number;
  readonly own: Float64Array;
}

/** Each fault that can move the test by itself; all the others as one, which reads as the healthy unit does. */
function groupsOf(table: FaultTable, live: Alive, entry: TestColumn): Group[] {
  const { start, column } = entry;
  const outcomes = outcomesOf(column);
  const groups: Group[] = [];
  const kinds = new Float64Array(table.kinds);
  let still = 0;
  for (const fault of live.faults) {
    const { share, trust } = fault;
    if (start[fault.fault]! < 0) {
      still += share;
      for (let k = 0; k < kinds.length; k += 1) kinds[k] = kinds[k]! + share * fault.kinds[k]!;
      continue;
    }
    const own = new Float64Array(outcomes);
    addDraws(column, start[fault.fault]!, fault, own);
    groups.push({ share, trust, own });
  }
  if (still > 0)
    groups.push({ share: still, trust: 1, own: healthyMix(cachedHealthy(table, entry), kinds, still, outcomes) });
  return groups;
}

/** Chance of each outcome for the healthy unit, its kinds mixed by their shares of a whole. */
function healthyMix(healthy: Float64Array, kinds: Float64Array, whole: number, outcomes: number): Float64Array {
  const own = new Float64Array(outcomes);
  for (let k = 0; k < kinds.length; k += 1) {
    const w = kinds[k]! / whole;
    for (let o = 0; o < outcomes; o += 1) own[o] = own[o]! + w * healthy[k * outcomes + o]!;
  }
  return own;
}

/** A test can tell no more than which of the faults that it tells apart it is. */
function mostInformation({ faults }: Alive, { start }: TestColumn): number {
  let still = 0;
  let moved = 0;
  let sum = 0;
  for (const { fault, share } of faults) {
    if (start[fault]! < 0) still += share;
    else {
      moved += share;
      sum += entropyTerm(share);
    }
  }
  const whole = still + moved;
  return (sum + entropyTerm(still)) / whole + Math.log(whole);
}

/**
 * Mutual information between the fault and the outcome of a test, nats; 0 where it cannot reach `least`.
 */
export function informationOf(table: FaultTable, live: Alive, entry: TestColumn, least: number): number {
  if (mostInformation(live, entry) < least) return 0;
  const groups = groupsOf(table, live, entry);
  const outcomes = outcomesOf(entry.column);
  const mass = groups.reduce((sum, { share }) => sum + share, 0);
  const pooled = new Float64Array(outcomes);
  for (const { share, own } of groups) {
    for (let o = 0; o < outcomes; o += 1) pooled[o] = pooled[o]! + (share / mass) * own[o]!;
  }
  let within = 0;
  for (const { share, trust, own } of groups) {
    // A fault with few draws left is taken to read partly as everything else does.
    for (let o = 0; o < outcomes; o += 1) own[o] = trust * own[o]! + (1 - trust) * pooled[o]!;
    within += (share / mass) * entropyOf(own);
  }
  return Math.max(0, entropyOf(pooled) - within);
}

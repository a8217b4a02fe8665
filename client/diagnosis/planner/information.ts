import { type Posterior, STRAY } from '../posterior/weigh-particles.ts';
import type { Column, FaultTable, TestColumn } from '../table/fault-table.ts';

/** A fault that still matters, with the draws of it that do. */
interface LiveFault {
  readonly fault: number;
  readonly share: number;
  readonly particles: readonly number[];
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
  const particles: number[] = [];
  const kinds = new Float64Array(table.kinds);
  let squares = 0;
  for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) {
    const w = weight[p]!;
    kinds[table.kind[p]!] = kinds[table.kind[p]!]! + w / share;
    squares += w * w;
    if (w > 1e-3 * share) particles.push(p);
  }
  const draws = (share * share) / squares;
  return { fault: f, share, particles, trust: draws / (draws + 1.5), kinds };
}

const entropyTerm = (x: number) => (x > 0 ? -x * Math.log(x) : 0);

const outcomesOf = (column: Column) => (column.kind === 'look' ? column.answers : column.bins);

/** Adds a particle's chance of each outcome. */
function addOutcomes(column: Column, p: number, weight: number, into: Float64Array, base: number): void {
  if (column.kind === 'look') {
    const { answers, chance } = column;
    for (let o = 0; o < answers; o += 1) into[base + o] = into[base + o]! + weight * chance[p * answers + o]!;
    return;
  }
  const first = base + column.firstBin[p]!;
  for (let o = 0; o < 3; o += 1) into[first + o] = into[first + o]! + weight * column.share[p * 3 + o]!;
}

/** Chance of each outcome for the sound unit, kind by kind. */
function soundOutcomes(table: FaultTable, column: Column): Float64Array {
  const outcomes = outcomesOf(column);
  const sum = new Float64Array(table.kinds * outcomes);
  const count = new Float64Array(table.kinds);
  for (let p = table.first[table.sound]!; p < table.first[table.sound + 1]!; p += 1) {
    const k = table.kind[p]!;
    count[k] = count[k]! + 1;
    addOutcomes(column, p, 1, sum, k * outcomes);
  }
  return sum.map((x, i) => x / Math.max(1, count[Math.floor(i / outcomes)]!));
}

const soundCache = new WeakMap<TestColumn, Float64Array>();

function cachedSound(table: FaultTable, entry: TestColumn): Float64Array {
  let found = soundCache.get(entry);
  if (!found) {
    found = soundOutcomes(table, entry.column);
    soundCache.set(entry, found);
  }
  return found;
}

/** Chance of each outcome for a fault that cannot move the test. */
function usualOutcomes(table: FaultTable, live: LiveFault, entry: TestColumn): Float64Array {
  const outcomes = outcomesOf(entry.column);
  const sound = cachedSound(table, entry);
  const usual = new Float64Array(outcomes);
  for (let k = 0; k < table.kinds; k += 1) {
    for (let o = 0; o < outcomes; o += 1) usual[o] = usual[o]! + live.kinds[k]! * sound[k * outcomes + o]!;
  }
  return usual;
}

/** Chance of each outcome for a fault that can, by its draws. */
function movedOutcomes(posterior: Posterior, live: LiveFault, entry: TestColumn): Float64Array {
  const own = new Float64Array(outcomesOf(entry.column));
  for (const p of live.particles) addOutcomes(entry.column, p, posterior.weight[p]! / live.share, own, 0);
  return own;
}

/** Mutual information between the fault and the outcome of a test, nats. */
export function informationOf(table: FaultTable, posterior: Posterior, live: Alive, entry: TestColumn): number {
  const { moved, column } = entry;
  if (!live.faults.some(({ fault }) => moved[fault] === 1)) return 0;
  const outcomes = outcomesOf(column);
  // With one kind of unit all faults that cannot move the test are one group with one distribution.
  const groups: { share: number; trust: number; own: Float64Array }[] = [];
  let still: { share: number; trust: number; own: Float64Array } | undefined;
  for (const fault of live.faults) {
    if (moved[fault.fault] === 1) {
      groups.push({ share: fault.share, trust: fault.trust, own: movedOutcomes(posterior, fault, entry) });
    } else if (still && table.kinds === 1) {
      still.share += fault.share;
    } else {
      still = { share: fault.share, trust: 1, own: usualOutcomes(table, fault, entry) };
      groups.push(still);
    }
  }
  const mass = groups.reduce((sum, { share }) => sum + share, 0);
  const pooled = new Float64Array(outcomes);
  for (const { share, own } of groups)
    for (let o = 0; o < outcomes; o += 1) pooled[o] = pooled[o]! + (share / mass) * own[o]!;
  let within = 0;
  for (const { share, trust, own } of groups) {
    // A fault with few draws left is taken to read partly as everything else does.
    for (let o = 0; o < outcomes; o += 1) {
      within += (share / mass) * entropyTerm(withStray(trust * own[o]! + (1 - trust) * pooled[o]!, outcomes));
    }
  }
  const total = pooled.reduce((sum, x) => sum + entropyTerm(withStray(x, outcomes)), 0);
  return Math.max(0, total - within);
}

const withStray = (chance: number, outcomes: number) => (1 - STRAY) * chance + STRAY / outcomes;

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

/** Adds the chance of each outcome for a fault that cannot move the test: the sound unit's, by kind. */
function addUsual(table: FaultTable, entry: TestColumn, kinds: Float64Array, weight: number, into: Float64Array): void {
  const sound = cachedSound(table, entry);
  for (let k = 0; k < table.kinds; k += 1) {
    const w = weight * kinds[k]!;
    if (w === 0) continue;
    for (let o = 0; o < into.length; o += 1) into[o] = into[o]! + w * sound[k * into.length + o]!;
  }
}

const withStray = (chance: number, outcomes: number) => (1 - STRAY) * chance + STRAY / outcomes;

function entropyOf(chances: Float64Array): number {
  let sum = 0;
  for (let o = 0; o < chances.length; o += 1) sum += entropyTerm(withStray(chances[o]!, chances.length));
  return sum;
}

/** Faults that read alike, with the chance of each outcome under them. */
interface Group {
  share: number;
  trust: number;
  readonly own: Float64Array;
}

/** Each fault that can move the test by itself, all the others as one. */
function groupsOf(table: FaultTable, posterior: Posterior, live: Alive, entry: TestColumn): Group[] {
  const { moved, column } = entry;
  const outcomes = outcomesOf(column);
  const groups: Group[] = [];
  const still: Group = { share: 0, trust: 1, own: new Float64Array(outcomes) };
  for (const { fault, share, trust, particles, kinds } of live.faults) {
    if (moved[fault] === 0) {
      still.share += share;
      addUsual(table, entry, kinds, share, still.own);
      continue;
    }
    const own = new Float64Array(outcomes);
    for (const p of particles) addOutcomes(column, p, posterior.weight[p]! / share, own, 0);
    groups.push({ share, trust, own });
  }
  if (still.share === 0) return groups;
  for (let o = 0; o < outcomes; o += 1) still.own[o] = still.own[o]! / still.share;
  return [...groups, still];
}

/** Mutual information between the fault and the outcome of a test, nats. */
export function informationOf(table: FaultTable, posterior: Posterior, live: Alive, entry: TestColumn): number {
  if (!live.faults.some(({ fault }) => entry.moved[fault] === 1)) return 0;
  const groups = groupsOf(table, posterior, live, entry);
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

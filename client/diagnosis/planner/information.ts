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
    if (w > 1e-4 * share) particles.push(p);
  }
  const draws = (share * share) / squares;
  return { fault: f, share, particles, trust: draws / (draws + 0.5), kinds };
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

/** Chance of each outcome under a fault, misreadings included. */
function outcomesUnder(table: FaultTable, posterior: Posterior, live: LiveFault, entry: TestColumn): Float64Array {
  const { column, moved } = entry;
  const outcomes = outcomesOf(column);
  const sound = cachedSound(table, entry);
  const usual = new Float64Array(outcomes);
  for (let k = 0; k < table.kinds; k += 1) {
    for (let o = 0; o < outcomes; o += 1) usual[o] = usual[o]! + live.kinds[k]! * sound[k * outcomes + o]!;
  }
  const own = new Float64Array(outcomes);
  if (moved[live.fault] === 1) {
    for (const p of live.particles) addOutcomes(column, p, (live.trust * posterior.weight[p]!) / live.share, own, 0);
  }
  const rest = moved[live.fault] === 1 ? 1 - live.trust : 1;
  return own.map((x, o) => (1 - STRAY) * (x + rest * usual[o]!) + STRAY / outcomes);
}

/** Mutual information between the fault and the outcome of a test, nats. */
export function informationOf(table: FaultTable, posterior: Posterior, live: Alive, entry: TestColumn): number {
  if (!live.faults.some(({ fault }) => entry.moved[fault] === 1)) return 0;
  const outcomes = outcomesOf(entry.column);
  const all = new Float64Array(outcomes);
  let mass = 0;
  let within = 0;
  let usual: { entropy: number; given: Float64Array } | undefined;
  for (const fault of live.faults) {
    const still = entry.moved[fault.fault] === 0 && table.kinds === 1;
    let now = still ? usual : undefined;
    if (!now) {
      const given = outcomesUnder(table, posterior, fault, entry);
      now = { given, entropy: given.reduce((sum, x) => sum + entropyTerm(x), 0) };
      if (still) usual = now;
    }
    for (let o = 0; o < outcomes; o += 1) all[o] = all[o]! + fault.share * now.given[o]!;
    within += fault.share * now.entropy;
    mass += fault.share;
  }
  const total = all.reduce((sum, x) => sum + entropyTerm(x / mass), 0);
  return Math.max(0, total - within / mass);
}

import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { type Readings, residualOf } from '../refrigerant/expected-figures.ts';
import type { Column, FaultTable, LookColumn, NumberColumn } from '../table/fault-table.ts';
import { ohmsScale } from '../table/predict.ts';
import { TEST_MODELS } from '../tests/test-models.ts';
import type { Standing, Taken } from './take-readings.ts';

/** Share of readings that were misread, misheard or taken at the wrong place. */
export const STRAY = 0.02;
/** However often a reading is repeated, it may have been taken at the wrong place. */
const LEAST_STRAY = 1e-4;

/** Weights over particles, and how each reading sat with them. */
export interface Posterior {
  /** Weight of each particle; they sum to 1. */
  readonly weight: Float64Array;
  /** Probability of each fault, in the order of the table. */
  readonly fault: Float64Array;
  /** For each reading used: the chance that it was a stray one. */
  readonly stray: ReadonlyMap<Taken, number>;
  /** For each reading used: what it multiplied each particle by. */
  readonly factor: ReadonlyMap<Taken, Float64Array>;
}

/** Numbers of the readings, by test. */
export function numbersOf(taken: ReadonlyMap<TestId, Taken>): Readings {
  return new Map([...taken.values()].filter((t) => !Number.isNaN(t.value)).map((t) => [t.test, t.value]));
}

/** What is compared with the column: on its scale, once for each metering device, with its own doubt. */
interface Compared {
  readonly fixed: number;
  readonly valve: number;
  readonly unsure: number;
}

function compared(table: FaultTable, reading: Taken, readings: Readings): Compared | undefined {
  const { measure } = TEST_MODELS[reading.test];
  if (measure.kind === 'residual') {
    return residualOf(measure.figure, new Map(readings).set(reading.test, reading.value), table.profile);
  }
  const value = measure.kind === 'ohms' || measure.kind === 'ohms-part' ? ohmsScale(reading.value) : reading.value;
  return { fixed: value, valve: value, unsure: 0 };
}

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Likelihood of a reading under particle p, without the stray part. */
type Likeness = (p: number) => number;

function numberFit(table: FaultTable, column: NumberColumn, y: Compared): Likeness {
  return (p) => {
    const spread = y.unsure === 0 ? column.spread[p]! : Math.hypot(column.spread[p]!, y.unsure);
    const z = ((table.valve[p] === 1 ? y.valve : y.fixed) - column.mean[p]!) / spread;
    return Math.exp(-0.5 * z * z) / (spread * ROOT_TWO_PI);
  };
}

function lookFit(column: LookColumn, reading: Taken): Likeness {
  const { measure } = TEST_MODELS[reading.test];
  const answer = measure.kind === 'look' ? measure.answers.indexOf(reading.observation!) : -1;
  return (p) => column.chance[p * column.answers + answer]!;
}

/** Average likeness of the sound unit's draws, for each kind of unit. */
function soundFit(table: FaultTable, likeness: Likeness): Float64Array {
  const sum = new Float64Array(table.kinds);
  const count = new Float64Array(table.kinds);
  for (let p = table.first[table.sound]!; p < table.first[table.sound + 1]!; p += 1) {
    const k = table.kind[p]!;
    sum[k] = sum[k]! + likeness(p);
    count[k] = count[k]! + 1;
  }
  const all = sum.reduce((a, b) => a + b, 0) / count.reduce((a, b) => a + b, 0);
  return sum.map((x, k) => (count[k]! > 0 ? x / count[k]! : all));
}

interface Likelihood {
  readonly likeness: Float64Array;
  /** Density of a reading that says nothing of the unit. */
  readonly strayDensity: number;
}

/**
 * The likelihood of a reading under every particle. A fault that cannot move the test has the sound unit's: its own
 * draws differ from it by chance only. With it the density of a stray reading.
 */
function likelihood(table: FaultTable, reading: Taken, readings: Readings): Likelihood | undefined {
  const entry = table.columns[table.tests.indexOf(reading.test)];
  if (!entry) return undefined;
  const { column, moved } = entry;
  const y = column.kind === 'number' ? compared(table, reading, readings) : undefined;
  if (column.kind === 'number' && !y) return undefined;
  const key = `${reading.test} ${y ? `${y.fixed} ${y.valve} ${y.unsure}` : reading.observation}`;
  return remember(table, key, () => computeLikelihood(table, reading, column, moved, y));
}

function computeLikelihood(
  table: FaultTable,
  reading: Taken,
  column: Column,
  moved: Uint8Array,
  y: Compared | undefined,
): Likelihood {
  const likeness = column.kind === 'look' ? lookFit(column, reading) : numberFit(table, column, y!);
  const sound = soundFit(table, likeness);
  const out = new Float64Array(table.kind.length);
  for (let f = 0; f < moved.length; f += 1) {
    for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) {
      out[p] = moved[f] === 1 ? likeness(p) : sound[table.kind[p]!]!;
    }
  }
  const open = table.faults.indexOf('something-else');
  const even = column.kind === 'look' ? 1 / column.answers : column.strayDensity;
  // A misread reading is half anything, half what some other fault would have shown.
  return { likeness: out, strayDensity: 0.5 * even + 0.5 * spreadOverAll(table, open, out) };
}

/** Likelihoods of the last readings: each step of a visit asks for those of all the steps before. */
const remembered = new WeakMap<FaultTable, Map<string, Likelihood>>();
const MOST_REMEMBERED = 64;

function remember(table: FaultTable, key: string, compute: () => Likelihood): Likelihood {
  const known = remembered.get(table) ?? new Map<string, Likelihood>();
  remembered.set(table, known);
  const found = known.get(key) ?? compute();
  known.delete(key);
  known.set(key, found);
  if (known.size > MOST_REMEMBERED) known.delete(known.keys().next().value!);
  return found;
}

/** How often one repair is all that was needed, before anything was read again (our weight, on the careful side). */
const CLEAR_AFTER_REPAIR = 0.3;

/** Prior of each fault after the repairs: a repaired fault seldom returns, and often nothing else was wrong. */
export function priorAfter(table: FaultTable, repaired: readonly FaultId[]): Float64Array {
  const prior = Float64Array.from(table.prior);
  if (repaired.length === 0) return prior;
  for (const fault of repaired) {
    const f = table.faults.indexOf(fault);
    if (f >= 0 && fault !== 'nothing-wrong') prior[f] = prior[f]! * 0.02;
  }
  const clear = table.faults.indexOf('nothing-wrong');
  prior[clear] = 0;
  const rest = prior.reduce((a, b) => a + b, 0);
  for (let f = 0; f < prior.length; f += 1) prior[f] = (prior[f]! / rest) * (1 - CLEAR_AFTER_REPAIR);
  prior[clear] = CLEAR_AFTER_REPAIR;
  return prior;
}

/**
 * Weights the particles by every standing reading: w ∝ π/K · Π [(1 − ε)·N + ε·o]. Under "something else" each reading
 * is as likely as it is over all faults together: nothing ties it to the others.
 */
export function weighParticles(table: FaultTable, standing: Standing): Posterior {
  const prior = priorAfter(table, standing.repaired);
  const particles = table.faultOf.length;
  const log = new Float64Array(particles);
  for (let p = 0; p < particles; p += 1)
    log[p] = Math.log((prior[table.faultOf[p]!]! * table.standing[p]!) / drawsOf(table, table.faultOf[p]!));
  const readings = numbersOf(standing.taken);
  const used: { reading: Taken; factor: Float64Array; strayPart: number }[] = [];
  for (const reading of standing.all) {
    const found = likelihood(table, reading, readings);
    if (!found) continue;
    const { likeness, strayDensity } = found;
    const stray = Math.max(LEAST_STRAY, STRAY ** reading.times);
    const factor = likeness.map((x) => (1 - stray) * x + stray * strayDensity);
    used.push({ reading, factor, strayPart: stray * strayDensity });
    for (let p = 0; p < particles; p += 1) log[p] = log[p]! + Math.log(factor[p]!);
  }
  const weight = normalise(log);
  const fault = new Float64Array(table.faults.length);
  for (let p = 0; p < particles; p += 1) fault[table.faultOf[p]!] = fault[table.faultOf[p]!]! + weight[p]!;
  const stray = new Map(used.map((u) => [u.reading, strayChance(weight, u.factor, u.strayPart)]));
  return { weight, fault, stray, factor: new Map(used.map((u) => [u.reading, u.factor])) };
}

const drawsOf = (table: FaultTable, f: number) => table.first[f + 1]! - table.first[f]!;

/** Gives "something else" the average likelihood over the faults, by their prior, and returns it. */
function spreadOverAll(table: FaultTable, open: number, likeness: Float64Array): number {
  let sum = 0;
  let mass = 0;
  for (let f = 0; f < table.faults.length; f += 1) {
    if (f === open) continue;
    let inner = 0;
    for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) inner += likeness[p]!;
    sum += (table.prior[f]! * inner) / drawsOf(table, f);
    mass += table.prior[f]!;
  }
  likeness.fill(sum / mass, table.first[open]!, table.first[open + 1]!);
  return sum / mass;
}

function normalise(log: Float64Array): Float64Array {
  let top = Number.NEGATIVE_INFINITY;
  for (let p = 0; p < log.length; p += 1) if (log[p]! > top) top = log[p]!;
  let sum = 0;
  const weight = new Float64Array(log.length);
  for (let p = 0; p < log.length; p += 1) {
    weight[p] = Math.exp(log[p]! - top);
    sum += weight[p]!;
  }
  for (let p = 0; p < log.length; p += 1) weight[p] = weight[p]! / sum;
  return weight;
}

function strayChance(weight: Float64Array, factor: Float64Array, strayPart: number): number {
  let chance = 0;
  for (let p = 0; p < weight.length; p += 1) chance += (weight[p]! * strayPart) / factor[p]!;
  return chance;
}

import { TEST_MODELS } from '../measuring/test-models.ts';
import { type Readings, residualOf } from '../refrigerant/expected-figures.ts';
import type { Column, FaultTable, LookColumn, NumberColumn, TestColumn } from '../table/fault-table.ts';
import { ohmsScale } from '../table/predict.ts';
import type { Taken } from './take-readings.ts';

/** A reading under every particle: particle p has the entry `place[p]`, as far as faults read alike the same one. */
export interface Likelihood {
  readonly place: Uint16Array;
  /** Density of the reading, the stray part left out. */
  readonly likeness: Float64Array;
  /** Density of a reading that says nothing of the unit. */
  readonly strayDensity: number;
}

/** What a reading multiplies the weight of each particle by, with its logarithm, by the same places. */
export interface Factor {
  readonly place: Uint16Array;
  readonly value: Float64Array;
  readonly log: Float64Array;
  /** The part of each value that a stray reading would have. */
  readonly strayPart: number;
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

/** Likeness of a reading under draw d of its column, of a unit with a thermostatic valve or without. */
type Likeness = (d: number, valve: number) => number;

function numberFit({ mean, spread, meanBefore, spreadBefore }: NumberColumn, y: Compared): Likeness {
  const unsure = y.unsure * y.unsure;
  return (d, valve) => {
    const own = spread[d]!;
    const width = unsure === 0 ? own : Math.sqrt(own * own + unsure);
    const value = valve === 1 ? y.valve : y.fixed;
    const now = normalDensity(value, mean[d]!, width);
    const before = meanBefore[d];
    if (before === undefined || Number.isNaN(before)) return now;
    return 0.5 * now + 0.5 * normalDensity(value, before, spreadBefore[d]!);
  };
}

function normalDensity(value: number, mean: number, width: number): number {
  const z = (value - mean) / width;
  return Math.exp(-0.5 * z * z) / (width * ROOT_TWO_PI);
}

function lookFit(column: LookColumn, reading: Taken): Likeness {
  const { measure } = TEST_MODELS[reading.test];
  const answer = measure.kind === 'look' ? measure.answers.indexOf(reading.observation!) : -1;
  return (d) => column.chance[d * column.answers + answer]!;
}

/** Average likeness of the healthy unit's draws, for each kind of unit. */
function healthyFit(table: FaultTable, start: Int32Array, likeness: Likeness): Float64Array {
  const sum = new Float64Array(table.kinds);
  const count = new Float64Array(table.kinds);
  const first = table.first[table.healthy]!;
  for (let p = first; p < table.first[table.healthy + 1]!; p += 1) {
    const k = table.kind[p]!;
    sum[k] = sum[k]! + likeness(start[table.healthy]! + p - first, table.valve[p]!);
    count[k] = count[k]! + 1;
  }
  const all = sum.reduce((a, b) => a + b, 0) / count.reduce((a, b) => a + b, 0);
  return sum.map((x, k) => (count[k]! > 0 ? x / count[k]! : all));
}

/**
 * The likelihood of a reading under every particle. A fault that cannot move the test has the healthy unit's: its own
 * draws differ from it by chance only. Undefined for what carries no likelihood itself, or lacks a reading it rests on.
 */
export function likelihood(table: FaultTable, reading: Taken, readings: Readings): Likelihood | undefined {
  const entry = table.columns[table.tests.indexOf(reading.test)];
  if (!entry) return undefined;
  const { column } = entry;
  const y = column.kind === 'number' ? compared(table, reading, readings) : undefined;
  if (column.kind === 'number' && !y) return undefined;
  const key = `${reading.test} ${y ? `${y.fixed} ${y.valve} ${y.unsure}` : reading.observation}`;
  return likelihoods(table, key, () => compute(table, reading, entry, y));
}

/** The places of a column: its own draws, then one for each kind of healthy unit, then "something else". */
interface Places {
  readonly place: Uint16Array;
  readonly draws: number;
  readonly open: number;
}

const places = new WeakMap<TestColumn, Places>();

function placesOf(table: FaultTable, entry: TestColumn): Places {
  const known = places.get(entry);
  if (known) return known;
  const { column, start } = entry;
  const draws = column.kind === 'look' ? column.chance.length / column.answers : column.mean.length;
  const open = draws + table.kinds;
  const place = new Uint16Array(table.kind.length);
  for (let f = 0; f < start.length; f += 1) {
    const isOpen = table.faults[f] === 'something-else';
    for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) {
      const usual = isOpen ? open : draws + table.kind[p]!;
      place[p] = start[f]! < 0 ? usual : start[f]! + p - table.first[f]!;
    }
  }
  const made = { place, draws, open };
  places.set(entry, made);
  return made;
}

function compute(table: FaultTable, reading: Taken, entry: TestColumn, y?: Compared): Likelihood {
  const { column, start } = entry;
  const { place, draws, open } = placesOf(table, entry);
  const like = column.kind === 'look' ? lookFit(column, reading) : numberFit(column, y!);
  const likeness = new Float64Array(open + 1);
  for (let f = 0; f < start.length; f += 1) {
    if (start[f]! < 0) continue;
    for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1)
      likeness[place[p]!] = like(place[p]!, table.valve[p]!);
  }
  likeness.set(healthyFit(table, start, like), draws);
  likeness[open] = spreadOverAll(table, place, likeness);
  // A misread reading is half anything, half what some other fault would have shown.
  return { place, likeness, strayDensity: 0.5 * evenDensity(column) + 0.5 * likeness[open]! };
}

const evenDensity = (column: Column) => (column.kind === 'look' ? 1 / column.answers : column.strayDensity);

/** The average likelihood over the faults, by their prior: that of "something else". */
function spreadOverAll(table: FaultTable, place: Uint16Array, likeness: Float64Array): number {
  let sum = 0;
  let mass = 0;
  for (let f = 0; f < table.faults.length; f += 1) {
    if (table.faults[f] === 'something-else') continue;
    let inner = 0;
    for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) inner += likeness[place[p]!]!;
    sum += (table.prior[f]! * inner) / (table.first[f + 1]! - table.first[f]!);
    mass += table.prior[f]!;
  }
  return sum / mass;
}

/** What the likelihood multiplies the weights by when a reading is a stray one this often. */
export function factorOf(found: Likelihood, stray: number): Factor {
  return factors(found, `${stray}`, () => {
    const strayPart = stray * found.strayDensity;
    const value = new Float64Array(found.likeness.length);
    const log = new Float64Array(value.length);
    for (let i = 0; i < value.length; i += 1) {
      value[i] = (1 - stray) * found.likeness[i]! + strayPart;
      log[i] = Math.log(value[i]!);
    }
    return { place: found.place, value, log, strayPart };
  });
}

/**
 * Keeps the last results for each owner: every step of a visit asks again for those of all the steps before.
 * @param most results kept for an owner
 */
function keeper<Owner extends object, Result>(most: number) {
  const kept = new WeakMap<Owner, Map<string, Result>>();
  return (owner: Owner, key: string, make: () => Result): Result => {
    const known = kept.get(owner) ?? new Map<string, Result>();
    kept.set(owner, known);
    const found = known.get(key) ?? make();
    known.delete(key);
    known.set(key, found);
    if (known.size > most) known.delete(known.keys().next().value!);
    return found;
  };
}

/** A visit's readings, and figures of the refrigerant side once more for each reading that may have been misread. */
const likelihoods = keeper<FaultTable, Likelihood>(96);
const factors = keeper<Likelihood, Factor>(3);

import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { type Factor, factorOf, likelihood } from './likelihood.ts';
import { type Misreading, misreadings, type Reliance, strayShare, usualReliance } from './misread-bases.ts';
import type { Standing, Taken } from './take-readings.ts';

/** Weights over particles, and how each reading sat with them; until the next is weighed for the same table. */
export interface Posterior {
  /** Weight of each particle; they sum to 1. */
  readonly weight: Float64Array;
  /** The particles that weigh anything in a sum over all, in order. */
  readonly heavy: Uint32Array;
  /** Probability of each fault, in the order of the table. */
  readonly fault: Float64Array;
  /** For each reading used: the chance that it was a stray one. */
  readonly stray: ReadonlyMap<Taken, number>;
  /** The same if this fault is the cause: what it cannot explain is a stray one. */
  readonly strayUnder: (reading: Taken, fault: number) => number;
  /** Probability of a fault had the reading not been taken. */
  readonly without: (reading: Taken, fault: number) => number;
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

/** All particles below this together are too few to matter. */
const LEAST_WEIGHT = 1e-7;
/** Stray part of a reading that others rest on where it is taken to be right: just enough for a logarithm. */
const LEAST_LEFT = 1e-6;

/** What a reading multiplies the weights by under a reliance; undefined for what carries no weight itself. */
function factorUnder(table: FaultTable, reading: Taken, reliance: Reliance, usual: Reliance): Factor | undefined {
  const found = likelihood(table, reading, reliance.numbers);
  if (reliance.right.has(reading.test)) {
    return found && factorOf(found, reliance.right.get(reading.test) === reading ? LEAST_LEFT : 1);
  }
  if (found) return factorOf(found, strayShare(reading.times));
  const otherwise = likelihood(table, reading, usual.numbers);
  return otherwise && factorOf(otherwise, 1);
}

/**
 * Arrays that every step of a table's visits writes anew: some hundred kilobytes a step would otherwise go through the
 * garbage collector. A posterior holds until the next one of its table is weighed.
 */
class Workspace {
  readonly log: Float64Array;
  readonly whole: Float64Array;
  readonly weight: Float64Array;
  readonly out: Float64Array;
  readonly live: Uint32Array;
  readonly heavy: Uint32Array;
  readonly #parts: Float64Array[] = [];

  constructor(particles: number) {
    this.log = new Float64Array(particles);
    this.whole = new Float64Array(particles);
    this.weight = new Float64Array(particles);
    this.out = new Float64Array(particles);
    this.live = new Uint32Array(particles);
    this.heavy = new Uint32Array(particles);
  }

  /** Room for the i-th misreading. */
  part(i: number): Float64Array {
    this.#parts[i] ??= new Float64Array(this.log.length);
    return this.#parts[i];
  }
}

const workspaces = new WeakMap<FaultTable, Workspace>();

function workspaceOf(table: FaultTable): Workspace {
  const known = workspaces.get(table) ?? new Workspace(table.faultOf.length);
  workspaces.set(table, known);
  return known;
}

/** A misreading under every particle: its share, times what it changes of the readings' likelihood. */
interface Weighed {
  readonly wrong: readonly Taken[];
  readonly part: Float64Array;
}

function weighMisreading(
  table: FaultTable,
  standing: Standing,
  usual: Reliance,
  { reliance, wrong, share }: Misreading,
  log: Float64Array,
  least: number,
  shift: Float64Array,
): Weighed {
  shift.fill(Math.log(share));
  for (const reading of standing.all) {
    const before = factorUnder(table, reading, usual, usual);
    const after = factorUnder(table, reading, reliance, usual);
    if (!before || !after || before === after) continue;
    const { place } = before;
    for (let p = 0; p < shift.length; p += 1) shift[p] = shift[p]! + after.log[place[p]!]! - before.log[place[p]!]!;
  }
  for (let p = 0; p < shift.length; p += 1) shift[p] = log[p]! + shift[p]! > least ? Math.exp(shift[p]!) : 0;
  return { wrong, part: shift };
}

/**
 * Weights the particles by every standing reading: w ∝ π/K · Π [(1 − ε)·N + ε·o], averaged over the ways in which a
 * reading that others rest on may have been misread. Under "something else" each reading is as likely as it is over all
 * faults together: nothing ties it to the others.
 */
export function weighParticles(table: FaultTable, standing: Standing): Posterior {
  const usual = usualReliance(standing);
  const used = new Map<Taken, Factor>();
  for (const reading of standing.all) {
    const factor = factorUnder(table, reading, usual, usual);
    if (factor) used.set(reading, factor);
  }
  const work = workspaceOf(table);
  const { log, whole } = work;
  log.set(logAfter(table, standing.repaired, [...used.values()]));
  const least = highest(log) + LEAST_LOG;
  const weighed = misreadings(standing, usual).map((one, i) =>
    weighMisreading(table, standing, usual, one, log, least, work.part(i)),
  );
  addUp(weighed, whole);
  if (weighed.length > 0) {
    for (let p = 0; p < log.length; p += 1) if (whole[p] !== 1) log[p] = log[p]! + Math.log(whole[p]!);
  }
  const { weight } = work;
  const live = normalise(log, weight, work.live);
  const fault = new Float64Array(table.faults.length);
  for (let i = 0; i < live.length; i += 1) {
    const f = table.faultOf[live[i]!]!;
    fault[f] = fault[f]! + weight[live[i]!]!;
  }

  /** What takes the reading out of each particle's weight: where others rest on it, the cases that have it wrong. */
  function takenOut(reading: Taken, among: Uint32Array): Float64Array {
    const { out } = work;
    if (!usual.right.has(reading.test)) {
      const { place, value } = used.get(reading)!;
      for (let i = 0; i < among.length; i += 1) out[i] = 1 / value[place[among[i]!]!]!;
      return out;
    }
    // A result that a later one denies is wrong in the usual case too.
    const denied = usual.right.get(reading.test) !== reading;
    for (let i = 0; i < among.length; i += 1) out[i] = denied ? 1 / whole[among[i]!]! : 0;
    for (const { wrong, part } of weighed) {
      if (!wrong.includes(reading)) continue;
      for (let i = 0; i < among.length; i += 1) out[i] = out[i]! + part[among[i]!]! / whole[among[i]!]!;
    }
    return out;
  }

  const heavy = heavyOf(live, weight, work.heavy);
  const stray = new Map<Taken, number>();
  for (const reading of standing.all) {
    const isBase = usual.right.has(reading.test);
    const factor = used.get(reading);
    if (!isBase && !factor) continue;
    const out = takenOut(reading, heavy);
    let chance = 0;
    for (let i = 0; i < heavy.length; i += 1) chance += weight[heavy[i]!]! * out[i]!;
    stray.set(reading, isBase ? chance : chance * factor!.strayPart);
  }

  const strayUnder = (reading: Taken, of: number): number => {
    if (!stray.has(reading)) return 0;
    const out = takenOut(reading, live);
    let own = 0;
    let wrong = 0;
    for (let i = 0; i < live.length; i += 1) {
      const p = live[i]!;
      if (table.faultOf[p] !== of) continue;
      own += weight[p]!;
      wrong += weight[p]! * out[i]!;
    }
    const chance = own > 0 ? wrong / own : 0;
    return usual.right.has(reading.test) ? chance : chance * used.get(reading)!.strayPart;
  };

  const without = (reading: Taken, of: number): number => {
    const out = takenOut(reading, live);
    let all = 0;
    let own = 0;
    for (let i = 0; i < live.length; i += 1) {
      const p = live[i]!;
      const left = weight[p]! * out[i]!;
      all += left;
      if (table.faultOf[p] === of) own += left;
    }
    return own / all;
  };
  return { weight, heavy, fault, stray, strayUnder, without };
}

/** The last sum of logarithms for a table, and what it was summed from. */
interface Summed {
  readonly repaired: string;
  readonly factors: readonly Factor[];
  readonly log: Float64Array;
}
const summed = new WeakMap<FaultTable, Summed>();

/** Logarithms of the weights after the factors. A step of a visit goes on from the step before. */
function logAfter(table: FaultTable, repaired: readonly FaultId[], factors: readonly Factor[]): Float64Array {
  const key = repaired.join(' ');
  const last = summed.get(table);
  const goesOn = last?.repaired === key && last.factors.every((factor, i) => factor === factors[i]);
  const log = goesOn ? last.log : startingLog(table, repaired);
  for (const factor of factors.slice(goesOn ? last.factors.length : 0)) {
    for (let p = 0; p < log.length; p += 1) log[p] = log[p]! + factor.log[factor.place[p]!]!;
  }
  summed.set(table, { repaired: key, factors, log });
  return log;
}

function startingLog(table: FaultTable, repaired: readonly FaultId[]): Float64Array {
  const prior = priorAfter(table, repaired);
  const log = new Float64Array(table.faultOf.length);
  for (let p = 0; p < log.length; p += 1) {
    const f = table.faultOf[p]!;
    log[p] = Math.log((prior[f]! * table.standing[p]!) / (table.first[f + 1]! - table.first[f]!));
  }
  return log;
}

/** All the cases together, beside the usual one. */
function addUp(weighed: readonly Weighed[], whole: Float64Array): void {
  whole.fill(1);
  for (const { part } of weighed) for (let p = 0; p < whole.length; p += 1) whole[p] = whole[p]! + part[p]!;
}

/** The live particles that weigh anything, written into `heavy`. */
function heavyOf(live: Uint32Array, weight: Float64Array, heavy: Uint32Array): Uint32Array {
  let count = 0;
  for (let i = 0; i < live.length; i += 1) {
    if (weight[live[i]!]! <= LEAST_WEIGHT) continue;
    heavy[count] = live[i]!;
    count += 1;
  }
  return heavy.subarray(0, count);
}

/** Below this share of the heaviest a particle has no weight: no single reading taken back would revive it. */
const LEAST_LOG = -32;

function highest(log: Float64Array): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let p = 0; p < log.length; p += 1) if (log[p]! > top) top = log[p]!;
  return top;
}

/** Writes the weights; returns the particles that have any, written into `live`. */
function normalise(log: Float64Array, weight: Float64Array, live: Uint32Array): Uint32Array {
  const top = highest(log);
  let count = 0;
  let sum = 0;
  for (let p = 0; p < log.length; p += 1) {
    const x = log[p]! - top;
    weight[p] = x > LEAST_LOG ? Math.exp(x) : 0;
    if (!(x > LEAST_LOG)) continue;
    sum += weight[p]!;
    live[count] = p;
    count += 1;
  }
  for (let i = 0; i < count; i += 1) weight[live[i]!] = weight[live[i]!]! / sum;
  return live.subarray(0, count);
}

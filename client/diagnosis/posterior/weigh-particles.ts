import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { type Factor, factorOf, likelihood } from './likelihood.ts';
import { type Misreading, misreadings, type Reliance, strayShare, usualReliance } from './misread-bases.ts';
import type { Standing, Taken } from './take-readings.ts';

/** Weights over particles, and how each reading sat with them. */
export interface Posterior {
  /** Weight of each particle; they sum to 1. */
  readonly weight: Float64Array;
  /** Probability of each fault, in the order of the table. */
  readonly fault: Float64Array;
  /** For each reading used: the chance that it was a stray one. */
  readonly stray: ReadonlyMap<Taken, number>;
  /** What takes a reading used out of the weight of each particle again, up to a constant. */
  readonly without: (reading: Taken) => Float64Array;
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

/** A particle keeps this much where a reading that others rest on is taken to be right. */
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
): Weighed {
  const shift = new Float64Array(table.kind.length);
  for (const reading of standing.all) {
    const before = factorUnder(table, reading, usual, usual)?.log;
    const after = factorUnder(table, reading, reliance, usual)?.log;
    if (!before || !after || before === after) continue;
    for (let p = 0; p < shift.length; p += 1) shift[p] = shift[p]! + after[p]! - before[p]!;
  }
  return { wrong, part: shift.map((x) => share * Math.exp(x)) };
}

/**
 * Weights the particles by every standing reading: w ∝ π/K · Π [(1 − ε)·N + ε·o], averaged over the ways in which a
 * reading that others rest on may have been misread. Under "something else" each reading is as likely as it is over all
 * faults together: nothing ties it to the others.
 */
export function weighParticles(table: FaultTable, standing: Standing): Posterior {
  const log = startingLog(table, standing.repaired);
  const usual = usualReliance(standing);
  const used = new Map<Taken, Factor>();
  for (const reading of standing.all) {
    const factor = factorUnder(table, reading, usual, usual);
    if (!factor) continue;
    used.set(reading, factor);
    for (let p = 0; p < log.length; p += 1) log[p] = log[p]! + factor.log[p]!;
  }
  const weighed = misreadings(standing, usual).map((one) => weighMisreading(table, standing, usual, one));
  const whole = new Float64Array(log.length).fill(1);
  for (const { part } of weighed) for (let p = 0; p < whole.length; p += 1) whole[p] = whole[p]! + part[p]!;
  for (let p = 0; p < log.length; p += 1) log[p] = log[p]! + Math.log(whole[p]!);
  const weight = normalise(log);
  const fault = new Float64Array(table.faults.length);
  for (let p = 0; p < weight.length; p += 1) fault[table.faultOf[p]!] = fault[table.faultOf[p]!]! + weight[p]!;
  const wrongPart = (reading: Taken) => {
    const parts = weighed.filter(({ wrong }) => wrong.includes(reading)).map(({ part }) => part);
    return whole.map((all, p) => parts.reduce((sum, part) => sum + part[p]!, 0) / all);
  };
  const stray = new Map<Taken, number>();
  for (const [reading, factor] of used) {
    if (!usual.right.has(reading.test)) stray.set(reading, strayChance(weight, factor));
  }
  for (const reading of standing.all) {
    if (usual.right.has(reading.test)) stray.set(reading, average(weight, wrongPart(reading)));
  }
  const without = (reading: Taken) =>
    usual.right.has(reading.test) ? wrongPart(reading) : used.get(reading)!.value.map((x) => 1 / x);
  return { weight, fault, stray, without };
}

const average = (weight: Float64Array, values: Float64Array) => weight.reduce((sum, w, p) => sum + w * values[p]!, 0);

/** Logarithms of the weights before any reading, for the last repairs asked for. */
const started = new WeakMap<FaultTable, { readonly repaired: string; readonly log: Float64Array }>();

function startingLog(table: FaultTable, repaired: readonly FaultId[]): Float64Array {
  const key = repaired.join(' ');
  const known = started.get(table);
  if (known?.repaired === key) return known.log.slice();
  const prior = priorAfter(table, repaired);
  const log = new Float64Array(table.faultOf.length);
  for (let p = 0; p < log.length; p += 1) {
    const f = table.faultOf[p]!;
    log[p] = Math.log((prior[f]! * table.standing[p]!) / (table.first[f + 1]! - table.first[f]!));
  }
  started.set(table, { repaired: key, log });
  return log.slice();
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

function strayChance(weight: Float64Array, { value, strayPart }: Factor): number {
  let chance = 0;
  for (let p = 0; p < weight.length; p += 1) chance += (weight[p]! * strayPart) / value[p]!;
  return chance;
}

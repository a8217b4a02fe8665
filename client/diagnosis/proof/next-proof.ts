import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { type Stance, stanceAfter, testCost } from '../planner/test-cost.ts';
import { mayBeReadAgain, type Standing, type Taken } from '../posterior/take-readings.ts';
import type { ProofRow } from './proof-row.ts';
import { mayBeNothing, type Proof, type Read } from './weigh-proof.ts';

/** Minutes of several tests one after the other. */
export function minutesOf(stance: Stance, tests: readonly TestId[]): number {
  let at = stance;
  return tests.reduce((sum, test) => {
    const cost = testCost(at, test);
    at = stanceAfter(at, test);
    return sum + cost;
  }, 0);
}

/** The tests that a row lacks, by the cheapest way of each thing to prove, what is nearest first. */
export function nextOfProof(stance: Stance, { lacking }: Proof): TestId[] {
  const cheapest = lacking.map(
    (ways) => ways.map((tests) => ({ tests, minutes: minutesOf(stance, tests) })).sort(byMinutes)[0]!,
  );
  return [...new Set(cheapest.sort(byMinutes).flatMap(({ tests }) => tests))];
}

const byMinutes = (a: { readonly minutes: number }, b: { readonly minutes: number }): number => a.minutes - b.minutes;

/** More than any test takes. */
const MOST_MINUTES = 100;

/** Where the act is costly, or a reading stays strange, and nothing that proves was taken twice or by two ways: the proving reading that is nearest, once more. */
export function proveTwice(
  stance: Stance,
  isCostly: boolean,
  { shown, byTwoWays }: Proof,
  standing: Standing,
): TestId[] {
  if (!isCostly || byTwoWays || shown.some(({ times }) => times > 1)) return [];
  const open = shown.filter(({ test }) => mayBeReadAgain(standing, test)).map(({ test }) => test);
  // What a slip gives as well before what only the part itself gives.
  const order = (test: TestId) => (mayBeNothing(standing.taken.get(test)!) ? 0 : MOST_MINUTES) + testCost(stance, test);
  return open.sort((a, b) => order(a) - order(b)).slice(0, 1);
}

/** What was taken and would prove at another moment, as the amps of a compressor that tries to start: once more. */
export const proofToTakeAgain = ({ again }: Proof, standing: Standing): TestId[] =>
  again.filter((test) => mayBeReadAgain(standing, test)).slice(0, 1);

/** What may end by itself and was read once: to be read again after so many minutes. */
export function waitBefore(
  { afterWait }: ProofRow,
  { standing, profile }: Read,
): { readonly test: TestId; readonly minutes: number } | undefined {
  if (!afterWait) return undefined;
  const { test, shows } = afterWait.check;
  const reading = standing.taken.get(test);
  const isToWaitFor = reading?.times === 1 && mayBeReadAgain(standing, test);
  return isToWaitFor && shows(reading, profile, new Map()) ? { test, minutes: afterWait.minutes } : undefined;
}

/** A denial that rests on a reading taken once: that reading again, before anything is excluded by it. */
export function denialsToTakeAgain({ denied }: Proof, standing: Standing): TestId[] {
  const isOnce = ({ times, test }: Taken) => times === 1 && mayBeReadAgain(standing, test);
  return denied.every(isOnce) ? denied.map(({ test }) => test).slice(-1) : [];
}

/** A reading that fits nothing and was taken once: the nearest of them again, before a search ends without a finding. */
export function strangeToTakeAgain(stance: Stance, strange: readonly Taken[], standing: Standing): TestId[] {
  const once = strange.filter(({ times, test }) => times === 1 && mayBeReadAgain(standing, test));
  return once
    .map(({ test }) => test)
    .sort((a, b) => testCost(stance, a) - testCost(stance, b))
    .slice(0, 1);
}

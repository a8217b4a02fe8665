import type { RankedSuspects } from '../../grammar/visit/inputs.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Diagnosis, Evidence, Suspect } from '../diagnosis/diagnosis.ts';
import type { TestMade } from './exercise-log.ts';

/** Suspects that are worth a line: so many, from so much on (ours). */
const MOST = 6;
const WORTH_A_LINE = 0.005;
export const leadingOf = (suspects: readonly Suspect[]): readonly Suspect[] =>
  suspects.slice(0, MOST).filter(({ probability }) => probability >= WORTH_A_LINE);

/** A test that tells less than this, or than this share of what is not known, tells nothing: the planner's own limits. Bits. */
const LEAST_BITS = 0.006;
const LEAST_SHARE = 0.025;

/** What is known of a test before it is made. */
export type Weighed = Pick<TestMade, 'bits' | 'open' | 'redundant' | 'expected'>;

/** What a test could tell before it was made. */
export function weighTest(
  test: TestId,
  evidence: readonly Evidence[],
  assessment: RankedSuspects | undefined,
  diagnosis: Diagnosis,
): Weighed {
  const suspects = assessment?.suspects ?? [];
  const bits = diagnosis.tells(test, evidence);
  const expected = diagnosis.explain(test, leadingOf(suspects), evidence);
  // What the search itself would ask for, once more or for a proof, is never idle.
  const isAsked = assessment?.next.some(({ id }) => id === test) === true;
  const open = bitsOpen(suspects);
  return { bits, open, expected, redundant: !isAsked && bits < Math.max(LEAST_BITS, LEAST_SHARE * open) };
}

/** What is known of a measurement of which no suspect says anything. */
export function untold(assessment: RankedSuspects | undefined): Weighed {
  return { bits: 0, open: bitsOpen(assessment?.suspects ?? []), expected: [], redundant: true };
}

/** How much of which fault it is stands open, bits. */
function bitsOpen(suspects: readonly Suspect[]): number {
  return suspects.reduce((sum, { probability: p }) => sum - (p > 0 ? p * Math.log2(p) : 0), 0);
}

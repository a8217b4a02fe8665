import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import type { Value } from '../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Diagnosis, Evidence, Expected, Suspect } from '../diagnosis/diagnosis.ts';
import { type Bearing, bearings, type Moved, movedByLast } from '../diagnosis/explain/explain-finding.ts';

/** An answer by its number, as it was given. */
export interface Answered {
  readonly answer: number;
  readonly test: TestId;
  readonly reading: Value | ObservationId;
}

/** Why the diagnosis asks what it asks, and thinks what it thinks. */
export interface Why {
  /** What each leading suspect would show at the next test; null when nothing more is asked. */
  readonly next: {
    readonly test: TestId;
    readonly expects: readonly (Expected & { readonly probability: number })[];
  } | null;
  readonly leader: { readonly fault: FaultId; readonly probability: number };
  /** The answers that it stands on, the heaviest first: its probability without each, and whom each takes out. */
  readonly standsOn: readonly (Answered & Omit<Bearing, 'seq'>)[];
  /** What the last answer moved. */
  readonly changed: readonly Moved[];
}

export const inTenThousandths = (probability: number): number => Math.round(probability * 1e4) / 1e4;

/** Suspects that are worth a prediction. */
const LEADING = 4;

/** @param answered by number of the answer less one */
export function whyOf(
  { assess, explain }: Diagnosis,
  evidence: readonly Evidence[],
  suspects: readonly Suspect[],
  answered: readonly Answered[],
  next: TestId | undefined,
): Why {
  const leading = suspects.filter((s, i) => i < LEADING && s.probability >= 0.005);
  const expects = (test: TestId) =>
    explain(test, leading).map((shown) => ({
      ...rounded(shown),
      probability: inTenThousandths(leading.find((s) => s.fault === shown.fault)!.probability),
    }));
  return {
    next: next === undefined ? null : { test: next, expects: expects(next) },
    leader: { fault: suspects[0]!.fault, probability: inTenThousandths(suspects[0]!.probability) },
    standsOn: bearings(assess, evidence).map(({ seq, leaderWithout, excludes }) => ({
      ...answered[seq - 1]!,
      leaderWithout: inTenThousandths(leaderWithout),
      excludes,
    })),
    changed: movedByLast(assess, evidence).map(({ fault, was, is }) => ({
      fault,
      was: inTenThousandths(was),
      is: inTenThousandths(is),
    })),
  };
}

function rounded(shown: Expected): Expected {
  if (shown.unit === 'observation' || typeof shown.expected !== 'number') return shown;
  return { ...shown, expected: (Math.round(shown.expected * 10) / 10) as Value };
}

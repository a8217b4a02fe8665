import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { exclusionWords } from '../things/exclusion-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { wholePercent } from '../things/value-words.ts';

/** A probability, to a hundredth: "67 %". */
export function showPercent(probability: number): string {
  return `${wholePercent(probability)} %`;
}

/** A fault with its probability, as one of several. */
export function showLikely({ fault, probability }: { readonly fault: FaultId; readonly probability: number }): string {
  return `${faultWords(fault)} ${showPercent(probability)}`;
}

/** A finding with its probability, and what it rests on where the tests that prove it were not done. */
export function showFinding({
  fault,
  probability,
  unproved = [],
}: {
  readonly fault: FaultId;
  readonly probability: number;
  readonly unproved?: readonly TestId[];
}): string {
  const found = `${faultWords(fault)}, ${showPercent(probability)}`;
  if (unproved.length === 0) return found;
  return `${found}, by exclusion: ${exclusionWords(fault, unproved)}`;
}

import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { exclusionWords } from '../things/exclusion-words.ts';
import { faultWords } from '../things/fault-words.ts';
import { wholePercent } from '../things/value-words.ts';

/** A chance of the model, to a hundredth, and never certain: "67 %". */
export function showPercent(probability: number): string {
  return `${wholePercent(probability)} %`;
}

/**
 * A share of what was counted: "100 %" is all of it, "0 %" none of it. Only a chance of the model stays below certainty.
 *
 * @param share from 0 to 1
 */
export function showShare(share: number): string {
  if (share <= 0 || share >= 1) return share <= 0 ? '0 %' : '100 %';
  return share < 0.005 ? 'under 1 %' : `${Math.min(99, Math.round(share * 100))} %`;
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

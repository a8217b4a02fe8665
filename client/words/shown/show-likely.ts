import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { faultWords } from '../things/fault-words.ts';

/** A probability, to a hundredth: "67 %". */
export function showPercent(probability: number): string {
  return `${Math.round(probability * 100)} %`;
}

/** A fault with its probability, as one of several. */
export function showLikely({ fault, probability }: { readonly fault: FaultId; readonly probability: number }): string {
  return `${faultWords(fault)} ${showPercent(probability)}`;
}

/** A fault with its probability, as the finding. */
export function showFinding({ fault, probability }: { readonly fault: FaultId; readonly probability: number }): string {
  return `${faultWords(fault)}, ${showPercent(probability)}`;
}

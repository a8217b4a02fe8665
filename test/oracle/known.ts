import type { Letter } from './facts.ts';

/** A disagreement that stands open: the paper's rule, what shows it in the fewest lines, and what the paper wants. */
export interface KnownDisagreement {
  readonly rule: Letter;
  readonly kind: string;
  readonly lines: readonly string[];
  readonly wants: string;
}

/** The most dangerous first. Rows leave this table as the machine is mended; none is added without a word why. */
export const KNOWN: readonly KnownDisagreement[] = [];

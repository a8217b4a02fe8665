import type { UnclearReason } from './meaning.ts';

/** What is known of a match when its confidence is set. */
export interface MatchSigns {
  /** Cost of the best meaning: distance from what is expected, likely and said plainly. */
  readonly cost: number;
  /** How much dearer the next meaning is. */
  readonly margin: number;
  readonly repairs: number;
  readonly reason: UnclearReason | undefined;
}

/** Weights of a logistic regression. */
const WEIGHTS = { constant: 4.6, cost: -0.9, margin: 0.35, repairs: -1.2, reason: -1.6 } as const;

/** The share of such understandings that are right, 0…1. */
export function confidenceOf(signs: MatchSigns): number {
  const score =
    WEIGHTS.constant +
    WEIGHTS.cost * Math.min(signs.cost, 4) +
    WEIGHTS.margin * Math.min(signs.margin, 2) +
    WEIGHTS.repairs * Math.min(signs.repairs, 4) +
    (signs.reason === undefined ? 0 : WEIGHTS.reason);
  return 1 / (1 + Math.exp(-score));
}

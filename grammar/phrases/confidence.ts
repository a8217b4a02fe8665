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

/**
 * Weights of a logistic regression over misheard utterances of the fixtures, made by
 * fixtures/utterances/fit-confidence.ts.
 * They tell how sure the words are; how sure the ear is of the sound is apart.
 */
const WEIGHTS = [2.99, -0.49, 0.59, 0.92, -2.31, -2.28];

/** The signs as numbers, in the order of the weights. */
export const signVector = (signs: MatchSigns): number[] => [
  1,
  Math.min(signs.cost, 4),
  Math.min(signs.margin, 2),
  Math.min(signs.repairs, 4),
  signs.reason === undefined ? 0 : 1,
  // A value that cannot be was mostly heard wrong.
  signs.reason === 'implausible' ? 1 : 0,
];

/** The share of such understandings that are right, 0…1. */
export function confidenceOf(signs: MatchSigns): number {
  const score = signVector(signs).reduce((sum, sign, index) => sum + sign * WEIGHTS[index]!, 0);
  return 1 / (1 + Math.exp(-score));
}

/** A stream of numbers in [0, 1): the same seed gives the same stream. */
export type Random = () => number;

/** Mulberry32 (T. Ettinger's public-domain generator, from memory): 32 bits of state are enough for drawing units. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A number between low and high. */
export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

/** A number between low and high, even in its logarithm. */
export function logBetween(random: Random, low: number, high: number): number {
  return Math.exp(between(random, Math.log(low), Math.log(high)));
}

/** A normal deviate (Box and Muller, 1958). */
export function normal(random: Random, mean: number, deviation: number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return mean + deviation * radius * Math.cos(2 * Math.PI * random());
}

export function chance(random: Random, probability: number): boolean {
  return random() < probability;
}

/** Steps of an additive recurrence in three dimensions (M. Roberts' R3, from memory): any beginning fills the cube. */
const EVEN_STEPS = [0.819172513396165, 0.671043606703789, 0.549700477901941] as const;

/**
 * A stream whose first three numbers are the k-th point of a sequence that fills the cube evenly, however many points
 * are taken: streams 0…n−1 leave no gap in the first quantities drawn.
 */
export function evenly(random: Random, k: number): Random {
  let drawn = -1;
  return () => {
    drawn += 1;
    const step = EVEN_STEPS[drawn];
    return step === undefined ? random() : (0.5 + k * step) % 1;
  };
}

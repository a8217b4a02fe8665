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

/** Steps of a plastic-number sequence: each next point falls into the widest gap (M. Roberts' R2, from memory). */
const EVEN_STEPS = [0.754877666246693, 0.569840290998053] as const;

/**
 * A stream whose first number is the k-th of n even strata and whose next two fill the square evenly: n such streams
 * leave no gap in the first quantities drawn. `stratum` is k in 0…n−1.
 */
export function stratified(random: Random, stratum: number, strata: number): Random {
  let drawn = -1;
  return () => {
    drawn += 1;
    if (drawn === 0) return (stratum + random()) / strata;
    const step = EVEN_STEPS[drawn - 1];
    return step === undefined ? random() : (0.5 + stratum * step) % 1;
  };
}

/** How far apart the beginning of a prompt may be from what was told of it, in samples at 16 kHz: 25 ms. */
const MOST = 400;
/** How like the two must be, where they are laid on one another, to be believed. */
const LIKE = 0.4;

/**
 * By how many samples one sound comes later than another that is like it (the peak of their normalised cross-correlation);
 * undefined where they are not alike. Positive: `sound` is the later one.
 */
export function lagOf(sound: Float32Array, like: Float32Array): number | undefined {
  let best: { readonly lag: number | undefined; readonly likeness: number } = { lag: undefined, likeness: LIKE };
  const power = Math.sqrt(powerOf(sound) * powerOf(like));
  for (let lag = -MOST; lag <= MOST; lag += 1) {
    let sum = 0;
    const [from, to] = [Math.max(0, lag), Math.min(sound.length, like.length + lag)];
    for (let at = from; at < to; at += 1) sum += sound[at]! * like[at - lag]!;
    const likeness = sum / Math.max(power, 1e-9);
    if (likeness > best.likeness) best = { lag, likeness };
  }
  return best.lag;
}

/** Sum of squares. */
export function powerOf(samples: Float32Array | Float64Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return sum;
}

/** -62 dBFS: below any microphone's own noise, above the digital silence that the acoustic model never saw. */
const AMPLITUDE = 10 ** (-62 / 20) * Math.sqrt(1.5);

/**
 * Adds triangular noise at -62 dBFS, the same noise every time. Synthetic or denoised sound has stretches of pure zero,
 * whose features lie far from anything the acoustic model was trained on; they would be scored as if they were not
 * silence.
 */
export function makeDither(): (samples: Float32Array) => void {
  let seed = 1;
  const random = (): number => {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    return seed / 0x7fffffff;
  };
  return (samples) => {
    for (let index = 0; index < samples.length; index += 1) samples[index]! += (random() + random() - 1) * AMPLITUDE;
  };
}

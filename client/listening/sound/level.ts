/** Mean level of a stretch of sound in dBFS (0 = full scale sine is -3); -100 for digital silence. */
export function levelOf(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return Math.max(-100, 10 * Math.log10(sum / Math.max(1, samples.length) + 1e-12));
}

import { FRAME } from './denoiser.ts';
import { levelOf } from './level.ts';

/** What a sound of 8 kHz cannot hold, in Hz, and how sharply the rest is kept out (Butterworth sections in a row). */
const CORNER = 5_500;
const SECTIONS = 4;
const SAMPLE_RATE = 16_000;

/**
 * How much the level above 5.5 kHz changes within an utterance, in dB: from its quiet tenth to its loud twentieth of
 * frames. The sounds of a mouth (s, t, f) make it swing by 6 dB and more; where a narrow line or headset cut them off
 * there is nothing but an even hiss.
 *
 * @param samples 16 kHz, -1…1, with some hiss under them
 */
export function upperSwing(samples: Float32Array): number {
  let upper = samples;
  for (let section = 0; section < SECTIONS; section += 1) upper = highPassed(upper);
  const levels = Array.from({ length: Math.floor(upper.length / FRAME) }, (_, index) =>
    levelOf(upper.subarray(index * FRAME, (index + 1) * FRAME)),
  ).sort((a, b) => a - b);
  const at = (share: number): number => levels[Math.floor(share * (levels.length - 1))] ?? 0;
  return at(0.95) - at(0.1);
}

/** Second-order Butterworth high pass (R. Bristow-Johnson's audio EQ cookbook, Q = 1/√2). */
function highPassed(samples: Float32Array): Float32Array {
  const turn = (2 * Math.PI * CORNER) / SAMPLE_RATE;
  const alpha = Math.sin(turn) / Math.SQRT2;
  const cosine = Math.cos(turn);
  const scale = 1 / (1 + alpha);
  const [b0, b1] = [((1 + cosine) / 2) * scale, -(1 + cosine) * scale];
  const [a1, a2] = [-2 * cosine * scale, (1 - alpha) * scale];
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return samples.map((x) => {
    const y = b0 * (x + x2) + b1 * x1 - a1 * y1 - a2 * y2;
    [x1, x2, y1, y2] = [x, x1, y, y1];
    return y;
  });
}

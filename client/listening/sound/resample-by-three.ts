/** Taps on each side of the windowed-sinc low-pass filter, in samples at 48 kHz. */
const HALF = 24;
/** What the filter delays, in samples at 16 kHz (for going up and for coming down alike). */
export const RESAMPLE_DELAY = HALF / 3;

const TAPS = lowPass();

/** A low-pass filter at 7.5 kHz for 48 kHz sound: sinc under a Blackman window, gain 1. */
function lowPass(): Float32Array {
  const taps = new Float32Array(2 * HALF + 1);
  let sum = 0;
  for (let index = 0; index < taps.length; index += 1) {
    const at = index - HALF;
    const x = (Math.PI * at * 0.94) / 3;
    const turn = (Math.PI * at) / (HALF + 1);
    const tap = (at === 0 ? 1 : Math.sin(x) / x) * (0.42 + 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn));
    taps[index] = tap;
    sum += tap;
  }
  return taps.map((tap) => tap / sum);
}

/** 16 kHz → 48 kHz, block by block. */
export class UpByThree {
  readonly #past = new Float32Array((2 * HALF) / 3);

  /** @returns three samples for each one, delayed by `RESAMPLE_DELAY` */
  push(block: Float32Array): Float32Array {
    const past = this.#past;
    const all = new Float32Array(past.length + block.length);
    all.set(past);
    all.set(block, past.length);
    const out = new Float32Array(3 * block.length);
    for (let index = 0; index < out.length; index += 1) {
      // Only every third sample at the higher rate is not zero: those are the ones that meet a tap.
      const phase = index % 3;
      const newest = past.length + (index - phase) / 3;
      let sum = 0;
      for (let tap = phase, at = newest; tap < TAPS.length && at >= 0; tap += 3, at -= 1) sum += TAPS[tap]! * all[at]!;
      out[index] = 3 * sum;
    }
    past.set(all.subarray(all.length - past.length));
    return out;
  }
}

/** 48 kHz → 16 kHz, block by block; a block's length is a multiple of three. */
export class DownByThree {
  readonly #past = new Float32Array(2 * HALF);

  /** @returns one sample for each three, delayed by `RESAMPLE_DELAY` */
  push(block: Float32Array): Float32Array {
    const past = this.#past;
    const all = new Float32Array(past.length + block.length);
    all.set(past);
    all.set(block, past.length);
    const out = new Float32Array(block.length / 3);
    for (let index = 0; index < out.length; index += 1) {
      const newest = past.length + 3 * index;
      let sum = 0;
      for (let tap = 0; tap < TAPS.length; tap += 1) sum += TAPS[tap]! * all[newest - tap]!;
      out[index] = sum;
    }
    past.set(all.subarray(all.length - past.length));
    return out;
  }
}

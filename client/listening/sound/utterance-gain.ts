import { levelOf } from './level.ts';

/** Loud frames of speech between these levels are left as they are: the models were measured there. In dBFS. */
const QUIETEST_DB = -28;
const LOUDEST_DB = -9;
/** Nothing is lifted by more: what lies below is a microphone's own noise. In dB. */
const MOST_DB = 45;
/** How far the gain gives way in a frame when a voice grows louder within its sentence: nine tenths in 50 ms. */
const GIVES_WAY = 0.37;
/** So many frames may be louder than what counts as the loud part: a click is no speech. */
const CLICKS = 2;

/**
 * Brings the speech of an utterance to the level that the recogniser is used to: it adds its own faint noise, which a
 * quieter voice would drown in. One gain from the first sound to the last, that gives way to a louder voice and never
 * rises: one that followed the syllables would change the features that it is to steady.
 */
export class UtteranceGain {
  #gain = 1;
  #goal = 1;
  /** Frames in a row that this gain would make too loud. */
  #louder = 0;

  /** An utterance begins with this sound. @param blocks frames of 10 ms, the silence before the first word among them */
  begin(blocks: readonly Float32Array[]): void {
    const levels = blocks.map(levelOf).sort((a, b) => b - a);
    this.#goal = gainFor(levels[Math.min(CLICKS, levels.length - 1)] ?? QUIETEST_DB);
    this.#gain = this.#goal;
    this.#louder = 0;
  }

  /** @returns the frame of 10 ms, scaled */
  scaled(samples: Float32Array): Float32Array {
    const most = 10 ** ((LOUDEST_DB - levelOf(samples)) / 20);
    this.#louder = most < this.#goal ? this.#louder + 1 : 0;
    if (this.#louder > CLICKS) this.#goal = most;
    const from = this.#gain;
    this.#gain += GIVES_WAY * (this.#goal - this.#gain);
    const step = (this.#gain - from) / samples.length;
    return samples.map((sample, index) => sample * (from + step * index));
  }
}

/** What brings a frame of this level between the bounds. */
function gainFor(levelDb: number): number {
  const wanted = Math.min(LOUDEST_DB, Math.max(QUIETEST_DB, levelDb)) - levelDb;
  return 10 ** (Math.min(MOST_DB, wanted) / 20);
}

import { levelOf } from './level.ts';

/** A frame counts by the loudest of the last so many: the weak end of a word is as near as its vowel. 10 ms each. */
const HOLD_FRAMES = 18;
/** Frames that are averaged before their level counts. */
const SMOOTHING = 0.35;
/** So far below the loud part of its own sentence a voice is another's, behind. In dB. */
const FAR_BELOW_DB = 15;
/** So far above what was heard up to then another voice begins, near by; in dB, for as many frames. */
const NEARER_DB = 10;
const NEARER_FRAMES = 6;
/** A sentence that has not yet lasted so long has no level to be held against. */
const KNOWN_FRAMES = 45;
/** How a far frame is damped: enough that no word is found in it, not so much that it is silence. */
const DAMPED = 0.1;

/**
 * Tells the voice that an utterance belongs to from those behind it, by level alone: the loud part of the sentence so
 * far is the speaker's own, what stays well below it is somebody else, and what rises well above it is somebody nearer.
 */
export class NearVoice {
  #recent: number[] = [];
  #smooth = -100;
  #loudest = -100;
  #frames = 0;
  #above = 0;

  /** An utterance begins with this sound. */
  begin(blocks: readonly Float32Array[]): void {
    this.#recent = [];
    this.#smooth = -100;
    this.#loudest = -100;
    this.#frames = 0;
    this.#above = 0;
    for (const block of blocks) this.#follow(block);
    this.#loudest = Math.max(...this.#recent);
  }

  /**
   * One more frame of 10 ms.
   * @param voiced whether it is anybody's speech
   * @returns `far`: another's behind; `nearer`: somebody nearer has just begun, and what was heard before was not theirs
   */
  step(block: Float32Array, voiced: boolean): 'near' | 'far' | 'nearer' {
    this.#follow(block);
    this.#frames += 1;
    this.#above = voiced && this.#smooth > this.#loudest + NEARER_DB ? this.#above + 1 : 0;
    if (this.#above >= NEARER_FRAMES && this.#frames > KNOWN_FRAMES) return 'nearer';
    if (voiced && this.#above === 0) this.#loudest = Math.max(this.#loudest, this.#smooth);
    else if (this.#frames <= KNOWN_FRAMES) this.#loudest = Math.max(this.#loudest, this.#smooth);
    return Math.max(...this.#recent) < this.#loudest - FAR_BELOW_DB ? 'far' : 'near';
  }

  /** A frame that is not of this voice, as it is given on. */
  static damped(block: Float32Array): Float32Array {
    return block.map((sample) => sample * DAMPED);
  }

  #follow(block: Float32Array): void {
    this.#smooth += SMOOTHING * (levelOf(block) - this.#smooth);
    this.#recent.push(this.#smooth);
    if (this.#recent.length > HOLD_FRAMES) this.#recent.shift();
  }
}

import { levelOf } from './level.ts';

/** A frame counts by the loudest of the last so many: the weak end of a word is as near as its vowel. 10 ms each. */
const HOLD_FRAMES = 18;
/** How much a frame's level counts beside those before it. */
const SMOOTHING = 0.35;
/** So far below the loud part of its own sentence a voice is another's, behind. In dB. */
const FAR_BELOW_DB = 13;
/**
 * In a number that may grow a soft digit is the speaker's own, for so many frames behind the last one that was loud. Of 201
 * numbers of people's digits with pauses to 400 ms, whose takes differ by up to 25 dB, 13 would end too soon without this,
 * whatever the pause; none with 120 to 300 frames. In none does anybody speak on softly for longer than 150: who does is
 * another.
 */
const GROWS_FRAMES = 150;
/** Who speaks on does so within so many frames more. */
const SPEAKS_ON_FRAMES = 20;
/** So far above all that was heard up to then a nearer voice begins; in dB, for so many frames. */
const NEARER_DB = 8;
const NEARER_FRAMES = 5;
/** A voice rises to its full loudness within so many frames. */
const RISE_FRAMES = 20;
/** What was heard for so many frames has a level that another voice can be held against. */
const KNOWN_FRAMES = 50;
/** The weak sound that a word may begin with, in frames before its first loud one. */
const LEAD_FRAMES = 18;
/** How a far frame is damped: enough that no word is found in it, not so much that it is silence. */
const DAMPED = 0.1;

/**
 * Tells the voice that an utterance belongs to from those behind it, by level alone: the loud part of the sentence so
 * far is the speaker's own, what stays well below it is somebody else, and what rises well above it is somebody nearer.
 */
export class NearVoice {
  /** Smoothed levels of the latest frames, in dBFS. */
  #recent: number[] = [];
  #smooth = -100;
  /** The loudest of all frames, and of those that are no longer among the latest. */
  #loudest = -100;
  #loudestBefore = -100;
  #frames = 0;
  #above = 0;
  #sinceLoud = 0;
  #spokeOn = false;

  /** Whether the latest frame is well below the loud part of the sentence. */
  get isSoft(): boolean {
    return this.#sinceLoud > 0;
  }

  /** Whether somebody spoke on softly, where a digit might have come, for longer than a number takes. */
  get spokeOn(): boolean {
    return this.#spokeOn;
  }

  /** The loud part of the sentence so far, in dBFS. */
  get loudestDb(): number {
    return this.#loudest;
  }

  /** An utterance begins with this sound. */
  begin(blocks: readonly Float32Array[]): void {
    this.#recent = [];
    this.#smooth = -100;
    this.#loudest = -100;
    this.#loudestBefore = -100;
    this.#above = 0;
    for (const block of blocks) this.#follow(block);
    this.#frames = 0;
    this.#sinceLoud = 0;
    this.#spokeOn = false;
  }

  /**
   * One more frame of 10 ms.
   * @param voiced whether it is anybody's speech
   * @param grows whether what was said so far is a number that may grow by a digit
   * @returns `far`: another's behind; `nearer`: somebody nearer has just begun, and what was heard before was not theirs
   */
  step(block: Float32Array, voiced: boolean, grows = false): 'near' | 'far' | 'nearer' {
    this.#follow(block);
    this.#frames += 1;
    this.#above = voiced && this.#smooth > this.#loudestBefore + NEARER_DB ? this.#above + 1 : 0;
    if (this.#above >= NEARER_FRAMES && this.#frames >= KNOWN_FRAMES) return 'nearer';
    const isSoft = Math.max(...this.#recent.slice(-HOLD_FRAMES)) < this.#loudest - FAR_BELOW_DB;
    this.#sinceLoud = isSoft ? this.#sinceLoud + 1 : 0;
    const isOver = this.#sinceLoud > GROWS_FRAMES;
    this.#spokeOn ||= grows && isOver && voiced && this.#sinceLoud <= GROWS_FRAMES + SPEAKS_ON_FRAMES;
    return isSoft && !(grows && !isOver) ? 'far' : 'near';
  }

  /** A frame that is not of this voice, as it is given on. */
  static damped(block: Float32Array): Float32Array {
    return block.map((sample) => sample * DAMPED);
  }

  /** The beginning of an utterance, without what others said before its own first word. Frames of 10 ms. */
  static withoutLead(blocks: readonly Float32Array[]): readonly Float32Array[] {
    const levels = blocks.map(levelOf);
    const limit = Math.max(...levels) - FAR_BELOW_DB;
    const first = levels.findIndex((level, at) => level > limit && (levels[at + 1] ?? level) > limit);
    return blocks.map((block, at) => (at < first - LEAD_FRAMES ? NearVoice.damped(block) : block));
  }

  #follow(block: Float32Array): void {
    this.#smooth += SMOOTHING * (levelOf(block) - this.#smooth);
    this.#recent.push(this.#smooth);
    this.#loudest = Math.max(this.#loudest, this.#smooth);
    if (this.#recent.length <= RISE_FRAMES) return;
    this.#loudestBefore = Math.max(this.#loudestBefore, this.#recent.shift() ?? -100);
  }
}

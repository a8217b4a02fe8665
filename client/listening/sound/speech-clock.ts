const FRAME_MS = 10;
/** A frame this far above the quiet around it, and this near to the loudest of the utterance, is still speech. */
const ABOVE_FLOOR_DB = 8;
const BELOW_PEAK_DB = 35;
/** How fast the floor follows a place that grows louder, in dB a frame (2 dB a second); it falls at once. */
const FLOOR_RISE = 0.02;
/** Frames whose levels are weighed before the floor may drop to them. */
const SMOOTHING = 0.3;

/**
 * Keeps two times side by side, both in milliseconds of sound: when speech was last loud, told from levels (not from
 * the voice detector, whose lag it measures; the detector only tells a knock after the last word from speech), and when the computing for all sound so far
 * would be done, had the sound come in real time.
 */
export class SpeechClock {
  #audioMs = 0;
  #busyUntilMs = 0;
  #computedMs = 0;
  #loudMs = 0;
  #lastSpeechMs = 0;
  #peakDb = -100;
  #smoothDb = -100;
  #floorDb = -60;
  #levelDb = -100;

  get audioMs(): number {
    return this.#audioMs;
  }

  /** End of the last frame that was loud enough to be speech and had a voice in it or after it. */
  get lastSpeechMs(): number {
    return this.#lastSpeechMs;
  }

  get busyUntilMs(): number {
    return this.#busyUntilMs;
  }

  /** Share of the time of all sound so far that computing took. */
  get load(): number {
    return this.#computedMs / Math.max(FRAME_MS, this.#audioMs);
  }

  get levelDb(): number {
    return this.#levelDb;
  }

  get floorDb(): number {
    return this.#floorDb;
  }

  /**
   * A frame has come.
   * @param open whether an utterance is open
   * @param voiced whether the voice detector takes the frame for speech: it lags, but a loud frame that no voice
   * follows or goes with is a noise
   */
  frame(levelDb: number, open: boolean, voiced: boolean): void {
    this.#audioMs += FRAME_MS;
    this.#levelDb = levelDb;
    this.#smoothDb += SMOOTHING * (levelDb - this.#smoothDb);
    this.#floorDb = Math.min(this.#floorDb + FLOOR_RISE, Math.max(-90, this.#smoothDb));
    if (open) this.#peakDb = Math.max(this.#peakDb, levelDb);
    const loud = levelDb > Math.max(this.#floorDb + ABOVE_FLOOR_DB, this.#peakDb - BELOW_PEAK_DB);
    if (loud && open) this.#loudMs = this.#audioMs;
    if (voiced) this.#lastSpeechMs = this.#loudMs;
  }

  /** Speech was found to have begun just now. */
  beginSpeech(): void {
    this.#peakDb = this.#levelDb;
    this.#loudMs = this.#audioMs;
    this.#lastSpeechMs = this.#audioMs;
  }

  /** Computing for the latest frame took so long. */
  computed(milliseconds: number): void {
    this.#computedMs += milliseconds;
    this.#busyUntilMs = Math.max(this.#busyUntilMs, this.#audioMs) + milliseconds;
  }
}

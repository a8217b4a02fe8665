/** The sound of the last while, by its time since the start: what was said a moment ago can still be cut out of it. */
export class SoundTail {
  readonly #rate: number;
  readonly #most: number;
  #blocks: Float32Array[] = [];
  /** Samples that were dropped before the first block. */
  #dropped = 0;
  #held = 0;

  /**
   * @param rate samples a second
   * @param mostMs how much is held, in milliseconds
   */
  constructor(rate: number, mostMs: number) {
    this.#rate = rate;
    this.#most = (mostMs * rate) / 1000;
  }

  push(samples: Float32Array): void {
    this.#blocks.push(samples);
    this.#held += samples.length;
    for (let first = this.#blocks[0]; first !== undefined && this.#held - first.length >= this.#most; ) {
      this.#blocks.shift();
      this.#held -= first.length;
      this.#dropped += first.length;
      first = this.#blocks[0];
    }
  }

  /** Silence up to a time, where the clock of the sound has gone on without any. */
  padTo(ms: number): void {
    const missing = Math.round((ms * this.#rate) / 1000) - this.#dropped - this.#held;
    if (missing > 0) this.push(new Float32Array(missing));
  }

  /** A copy of the sound between two times, as far as it is still held. */
  cut(fromMs: number, toMs: number): Float32Array {
    const from = Math.max(0, Math.round((fromMs * this.#rate) / 1000) - this.#dropped);
    const to = Math.min(this.#held, Math.round((toMs * this.#rate) / 1000) - this.#dropped);
    const cut = new Float32Array(Math.max(0, to - from));
    let at = 0;
    for (const block of this.#blocks) {
      const part = block.subarray(Math.max(0, from - at), Math.max(0, to - at));
      if (part.length > 0) cut.set(part, Math.max(0, at - from));
      at += block.length;
    }
    return cut;
  }
}

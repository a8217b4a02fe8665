import { FRAME } from './denoiser.ts';

/** 10 ms. */
const FRAME_MS = FRAME / 16;
/** Speech begins when this many of the latest frames were speech: RNNoise's own gate, measured on people and noise. */
const ONSET_FRAMES = 8;
const ONSET_WINDOW = 10;
const ONSET_LIKELIHOOD = 0.6;
/** Once somebody speaks a frame counts as speech down to this: the quiet end of a word. */
const SPEECH_LIKELIHOOD = 0.35;
/** A monologue is closed after this long. */
const LONGEST_MS = 15_000;

/** Whether a frame of an utterance that is open is speech, be it whose it may. @param likelihood 0…1 */
export const isSpeech = (likelihood: number): boolean => likelihood >= SPEECH_LIKELIHOOD;

export type Turn = 'quiet' | 'began' | 'speaking' | 'pausing' | 'ended';

/** Finds where speech begins and ends, from how likely each 10 ms frame is speech. */
export class Endpointer {
  #recent: boolean[] = [];
  #open = false;
  #frames = 0;
  #speechFrames = 0;
  #pauseFrames = 0;

  /**
   * @param speech how likely the frame is speech, 0…1
   * @param hangoverMs how long a pause ends the utterance just now
   */
  step(speech: number, hangoverMs: number): Turn {
    if (!this.#open) return this.#waitForSpeech(speech);
    this.#frames += 1;
    const spoken = isSpeech(speech);
    this.#pauseFrames = spoken ? 0 : this.#pauseFrames + 1;
    if (spoken) this.#speechFrames += 1;
    if (this.#pauseFrames * FRAME_MS >= hangoverMs || this.#frames * FRAME_MS >= LONGEST_MS) {
      this.#open = false;
      this.#recent = [];
      return 'ended';
    }
    return spoken ? 'speaking' : 'pausing';
  }

  /** The utterance that is open begins here: what was heard before was not of it. */
  beginAnew(): void {
    this.#frames = 0;
    this.#speechFrames = ONSET_FRAMES;
    this.#pauseFrames = 0;
  }

  get open(): boolean {
    return this.#open;
  }

  /** Frames of speech in the utterance that is open, or was last. */
  get speechFrames(): number {
    return this.#speechFrames;
  }

  get pauseMs(): number {
    return this.#pauseFrames * FRAME_MS;
  }

  #waitForSpeech(speech: number): Turn {
    this.#recent.push(speech >= ONSET_LIKELIHOOD);
    if (this.#recent.length > ONSET_WINDOW) this.#recent.shift();
    const spoken = this.#recent.filter(Boolean).length;
    if (spoken < ONSET_FRAMES) return 'quiet';
    this.#open = true;
    this.#frames = 0;
    this.#speechFrames = spoken;
    this.#pauseFrames = 0;
    return 'began';
  }
}

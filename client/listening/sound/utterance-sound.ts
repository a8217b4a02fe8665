import { makeDither } from './dither.ts';
import { NearVoice } from './near-voice.ts';
import { UtteranceGain } from './utterance-gain.ts';

/** Sound from before the onset that belongs to the utterance. */
const PRE_ROLL_FRAMES = 30;
/** Frames of an utterance that are gathered before the first is given on, so that its loudness is known. */
const GATHERED_FRAMES = 60;
/** Frames of soft speech that may be a word. */
const SOFT_WORD_FRAMES = 8;
/** The soft beginning of somebody's own sentence is no longer, in frames of speech. */
const SOFT_FRAMES = 150;

/** The sound of one utterance after another as the recogniser is given it: whose it is, how loud, with dither under it. */
export class UtteranceSound {
  readonly #give: (samples: Float32Array) => void;
  readonly #dither = makeDither();
  readonly #gain = new UtteranceGain();
  readonly #near = new NearVoice();
  /** The latest sound, cleaned. */
  #preRoll: Float32Array[] = [];
  /** What was cleaned and waits for its gain; undefined once that is known. */
  #gathered: Float32Array[] | undefined;
  #given: Float32Array[] = [];
  /** Which of it is well below the loud part of the sentence, and was given on as it is all the same. */
  #soft = new Set<Float32Array>();
  #softSpeech = 0;
  /** What was given before somebody nearer began, and how many frames of it were speech. */
  #farther: Float32Array[] = [];
  #fartherFrames = 0;

  /** @param give takes each frame as it is to be recognised */
  constructor(give: (samples: Float32Array) => void) {
    this.#give = give;
  }

  /** Every frame, cleaned, behind whatever else is done with it: the beginning of the next utterance may lie in it. */
  remember(samples: Float32Array): void {
    this.#preRoll.push(samples);
    if (this.#preRoll.length > PRE_ROLL_FRAMES) this.#preRoll.shift();
  }

  /** An utterance begins with what is remembered. */
  begin(): void {
    this.#farther = [];
    this.#fartherFrames = 0;
    this.#beginVoice();
  }

  /** Somebody nearer than who was heard so far begins. @param speechFrames of what was heard up to now */
  beginNearer(speechFrames: number): void {
    this.#farther = [...this.#farther, ...this.#given];
    this.#fartherFrames += speechFrames;
    this.#beginVoice();
  }

  /** Whose one more frame of the open utterance is. @param voiced, grows as `NearVoice.step` takes them */
  placeOf(samples: Float32Array, voiced: boolean, grows = false): ReturnType<NearVoice['step']> {
    return this.#near.step(samples, voiced, grows);
  }

  /** A frame of the open utterance. @param voiced whether it was counted as speech */
  take(samples: Float32Array, place: ReturnType<NearVoice['step']>, voiced = false): void {
    const own = place === 'far' ? NearVoice.damped(samples) : samples;
    if (this.#gathered === undefined) {
      this.#giveOn(own);
      if (place !== 'far' && this.#near.isSoft) this.#takeSoft(voiced);
      return;
    }
    this.#gathered.push(own);
    if (this.#gathered.length >= GATHERED_FRAMES) this.settle();
  }

  /** Gives on what is still gathered: nothing that follows may change its gain. */
  settle(): void {
    const blocks = this.#gathered;
    if (blocks === undefined) return;
    this.#gathered = undefined;
    this.#gain.begin(blocks);
    // Where nobody else was heard before, a soft first word is the speaker's own.
    for (const block of this.hasFarther ? NearVoice.withoutLead(blocks) : blocks) this.#giveOn(block);
  }

  /** All that was given on of the utterance. */
  get given(): readonly Float32Array[] {
    return this.#given;
  }

  /** The loud part of the utterance, in dBFS, before its gain. */
  get loudestDb(): number {
    return this.#near.loudestDb;
  }

  get hasFarther(): boolean {
    return this.#farther.length > 0;
  }

  /** Whether what was heard before somebody nearer began may be the soft beginning of the same sentence. */
  get mayHaveBegunSoftly(): boolean {
    return this.hasFarther && this.#fartherFrames <= SOFT_FRAMES;
  }

  /** Whether a soft voice that might have said a digit spoke on: it was another's. */
  get spokeOnSoftly(): boolean {
    return this.#near.spokeOn;
  }

  /** Whether a word of it may be of a soft voice, be it the speaker's or another's. */
  get hasSoftWord(): boolean {
    return this.#softSpeech >= SOFT_WORD_FRAMES;
  }

  /** Damps what the soft voice said. @returns frames of speech that this takes away */
  withoutSoft(): number {
    const taken = this.#softSpeech;
    this.#softSpeech = 0;
    this.#given = this.#given.map((block) => (this.#soft.has(block) ? NearVoice.damped(block) : block));
    return taken;
  }

  /** Takes the utterance from its very start, before somebody nearer began. @returns frames of speech that this adds */
  joinFarther(): number {
    this.#given = [...this.#farther, ...this.#given];
    return this.#fartherFrames;
  }

  /** The utterance turned out to be of this sound. */
  put(sound: readonly Float32Array[]): void {
    this.#given = [...sound];
  }

  #beginVoice(): void {
    this.#given = [];
    this.#soft = new Set();
    this.#softSpeech = 0;
    this.#gathered = [...this.#preRoll];
    this.#near.begin(this.#preRoll);
  }

  #takeSoft(voiced: boolean): void {
    const last = this.#given.at(-1);
    if (last !== undefined) this.#soft.add(last);
    if (voiced) this.#softSpeech += 1;
  }

  #giveOn(samples: Float32Array): void {
    const scaled = this.#gain.scaled(samples);
    this.#dither(scaled);
    this.#given.push(scaled);
    this.#give(scaled);
  }
}

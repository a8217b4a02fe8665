import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { type Gate, saysTooLittle } from './recogniser/gate.ts';
import type { Pronunciations } from './recogniser/grammar-decoder.ts';
import { Recogniser, type Recognition } from './recogniser/recogniser.ts';
import type { StandsFor } from './recogniser/rivals.ts';
import type { SpeechModel, SpeechModule } from './recogniser/speech-module.ts';
import { type Recognising, TwoModels } from './recogniser/two-models.ts';
import { DENOISER_DELAY, Denoiser, FRAME, type NoiseModule } from './sound/denoiser.ts';
import { makeDither } from './sound/dither.ts';
import { Endpointer } from './sound/endpointer.ts';
import { levelOf } from './sound/level.ts';
import { SpeechClock } from './sound/speech-clock.ts';

export interface HearingParts {
  readonly speech: SpeechModule;
  readonly model: SpeechModel;
  /** A second model, of 8 kHz: for sound that has no more, and where the first cannot tell two sentences apart. */
  readonly second?: SpeechModel;
  readonly rnnoise: NoiseModule;
  /** Words that the model's dictionary lacks. */
  readonly pronunciations: Pronunciations;
  readonly gates: Readonly<Record<SpeechModel['id'], Gate>>;
  /** Which words are tried in each other's place, so that a near one is asked. */
  readonly standsFor: StandsFor;
  /** JSGF of everything that can be said (`all`), or of what is expected now; undefined: nothing special is. */
  grammarFor(expectation: Expectation | 'all' | 'urgent'): string | undefined;
  /** Whether the words so far are something whole: a pause after them ends the utterance sooner. */
  isWhole(text: string, expectation: Expectation): boolean;
  /** Any clock in milliseconds; only differences count. */
  now(): number;
}

/** One utterance as it came out of the sound. Times in milliseconds of sound since the start. */
export interface HeardSpeech extends Recognition {
  readonly startedMs: number;
  /** End of the last frame of speech. */
  readonly endedMs: number;
  /** From there to the words, had the sound come in real time: pause waited for and computing that lagged behind. */
  readonly verdictMs: number;
  readonly realTimeFactor: number;
}

const FRAME_MS = 10;
/** Sound from before the onset that belongs to the utterance. */
const PRE_ROLL_FRAMES = 30;
/** After this much pause the words so far are looked at, once. */
const LOOK_MS = 120;
/** The pause that ends an utterance: after something whole, and after anything else. */
const PAUSE_MS = { whole: 260, open: 620 } as const;
/** Share of denoised sound; the rest is the sound as it came. */
const WET = 0.8;

/** Sound in, utterances out: noise taken out, speech found, recognised, gated. Blocks while it computes. */
export class Hearing {
  readonly #parts: HearingParts;
  readonly #recogniser: Recognising;
  readonly #denoiser: Denoiser;
  readonly #dither = makeDither();
  readonly #endpointer = new Endpointer();
  readonly #clock = new SpeechClock();
  /** The sound as it came, waiting for its denoised self. */
  readonly #delayed = new Float32Array(DENOISER_DELAY + FRAME);
  #waiting: Float32Array = new Float32Array(0);
  #preRoll: Float32Array[] = [];
  #startedMs = 0;
  #hangoverMs: number = PAUSE_MS.open;
  #looked = false;
  #computedMs = 0;
  #expectation: Expectation = { readings: [] };
  #heeds: 'everything' | 'urgent' = 'everything';
  #grammarStale = true;

  private constructor(parts: HearingParts, recogniser: Recognising) {
    this.#parts = parts;
    this.#recogniser = recogniser;
    this.#denoiser = new Denoiser(parts.rnnoise);
  }

  /** Loads the model and builds the grammars. @throws ListeningError `model-missing`, `grammar-unknown-word` */
  static async open(parts: HearingParts): Promise<Hearing> {
    const { speech, model, second, pronunciations, gates, standsFor } = parts;
    const first = await Recogniser.open(speech, model, pronunciations, gates[model.id], standsFor);
    const recogniser =
      second === undefined
        ? first
        : new TwoModels(first, await Recogniser.open(speech, second, pronunciations, gates[second.id], standsFor));
    const all = parts.grammarFor('all');
    if (all !== undefined) recogniser.setEverything(all);
    return new Hearing(parts, recogniser);
  }

  /** What is expected from the next utterance on. */
  expect(expectation: Expectation): void {
    this.#expectation = expectation;
    this.#grammarStale = true;
  }

  /** While the mouth speaks only the urgent words are heeded. */
  heed(what: 'everything' | 'urgent'): void {
    if (what === this.#heeds) return;
    this.#heeds = what;
    this.#grammarStale = true;
  }

  get speaking(): boolean {
    return this.#endpointer.open;
  }

  /** Level of the latest frame and of the quiet around it, in dBFS. */
  get level(): { readonly db: number; readonly floorDb: number } {
    return { db: this.#clock.levelDb, floorDb: this.#clock.floorDb };
  }

  /** How much sound has come. */
  get audioMs(): number {
    return this.#clock.audioMs;
  }

  /** @param samples 16 kHz mono, -1…1, any number of them; 10 to 20 ms at a time is best */
  push(samples: Float32Array): HeardSpeech[] {
    const all = new Float32Array(this.#waiting.length + samples.length);
    all.set(this.#waiting);
    all.set(samples, this.#waiting.length);
    const heard: HeardSpeech[] = [];
    let at = 0;
    for (; at + FRAME <= all.length; at += FRAME) heard.push(...this.#frame(all.subarray(at, at + FRAME)));
    this.#waiting = all.slice(at);
    return heard;
  }

  /** The sound is over: what is still open is closed, as if silence followed. */
  flush(): HeardSpeech[] {
    const heard: HeardSpeech[] = [];
    const silence = new Float32Array(FRAME);
    // Long enough for what is still in the denoiser to come out, for speech to be noticed, and for the longest pause.
    const most = (PAUSE_MS.open + 300) / FRAME_MS;
    for (let count = 0; count < most; count += 1) heard.push(...this.#frame(silence));
    return heard;
  }

  close(): void {
    this.#recogniser.close();
    this.#denoiser.close();
  }

  #frame(frame: Float32Array): HeardSpeech[] {
    const began = this.#parts.now();
    const { samples, speech } = this.#clean(frame);
    const open = this.#endpointer.open;
    const turn = this.#endpointer.step(speech, this.#hangoverMs);
    this.#clock.frame(levelOf(frame), open, turn === 'speaking');
    let recognition: Recognition | undefined;
    if (turn === 'began') this.#begin();
    if (turn === 'quiet') this.#keepPreRoll(samples);
    else this.#recogniser.feed(samples);
    if (turn === 'speaking' && this.#looked) this.#lookLater();
    if (turn === 'pausing' && !this.#looked && this.#endpointer.pauseMs >= LOOK_MS) this.#look();
    if (turn === 'ended') recognition = this.#recogniser.end(this.#endpointer.speechFrames);
    const spent = this.#parts.now() - began;
    this.#clock.computed(spent);
    if (turn !== 'quiet') this.#computedMs += spent;
    return recognition === undefined ? [] : [this.#heard(recognition)];
  }

  #clean(frame: Float32Array): { readonly samples: Float32Array; readonly speech: number } {
    const { samples, speech } = this.#denoiser.push(frame);
    const dry = this.#delayed;
    dry.copyWithin(0, FRAME);
    dry.set(frame, DENOISER_DELAY);
    for (let index = 0; index < FRAME; index += 1) {
      samples[index] = WET * samples[index]! + (1 - WET) * dry[index]!;
    }
    this.#dither(samples);
    return { samples, speech };
  }

  #keepPreRoll(samples: Float32Array): void {
    this.#preRoll.push(samples);
    if (this.#preRoll.length > PRE_ROLL_FRAMES) this.#preRoll.shift();
  }

  #begin(): void {
    if (this.#grammarStale) {
      const urgent = this.#heeds === 'urgent';
      this.#recogniser.setExpected(this.#parts.grammarFor(urgent ? 'urgent' : this.#expectation), urgent);
      this.#grammarStale = false;
    }
    this.#startedMs = Math.max(0, this.#clock.audioMs - 100);
    this.#computedMs = 0;
    this.#clock.beginSpeech();
    this.#lookLater();
    this.#recogniser.begin();
    for (const block of this.#preRoll) this.#recogniser.feed(block);
    this.#preRoll = [];
  }

  #lookLater(): void {
    this.#looked = false;
    this.#hangoverMs = PAUSE_MS.open;
  }

  #look(): void {
    this.#looked = true;
    const whole = this.#parts.isWhole(this.#recogniser.partial(), this.#expectation);
    this.#hangoverMs = whole ? PAUSE_MS.whole : PAUSE_MS.open;
  }

  #heard(recognition: Recognition): HeardSpeech {
    const endedMs = this.#clock.lastSpeechMs;
    return {
      ...recognition,
      accepted: recognition.accepted && !saysTooLittle(recognition.text, this.#endpointer.speechFrames),
      startedMs: this.#startedMs,
      endedMs,
      verdictMs: this.#clock.busyUntilMs - endedMs,
      realTimeFactor: this.#computedMs / Math.max(FRAME_MS, this.#clock.audioMs - this.#startedMs),
    };
  }
}

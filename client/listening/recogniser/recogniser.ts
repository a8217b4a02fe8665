import { confidenceOf, cutOf, type Gate, marginOf, type Trial } from './gate.ts';
import { GrammarDecoder, type Hypothesis, type Pronunciations } from './grammar-decoder.ts';
import { PHONE_LOOP, PHONE_WORDS } from './phone-loop.ts';
import type { SpeechModel, SpeechModule } from './speech-module.ts';

/** What was heard in one stretch of speech. */
export interface Recognition {
  readonly text: string;
  /** False when the sound did not fit the grammar: `text` is then the nearest sentence, not to be believed. */
  readonly accepted: boolean;
  /** Taken, but it fits so badly that a value in it is to be asked. */
  readonly doubtful: boolean;
  readonly confidence: number;
  /** Score against the phone loop for each frame of speech. */
  readonly margin: number;
  /** Which grammar the words come from. */
  readonly pass: 'expected' | 'everything';
  /** How many times the sound was decoded before the words were believed. */
  readonly looks: number;
  /** The other grammar's sentence, where it was asked and differs. */
  readonly alternatives: readonly string[];
}

/**
 * How far the mean cepstrum of an utterance may lie from the one it was decoded under. Beyond it the utterance is decoded
 * anew under its own: with another voice or microphone that is worth 1 to 4 right in 100 (measured on people), with the
 * same one it would only cost time.
 */
const FAR = 14;
/** How much the mean of each utterance counts in what the next is decoded under. */
const FOLLOW = 0.2;
/**
 * Narrower beams than the module's own (1e-48, 7e-29) for the expected sentences and the loop: half the time in noise.
 * Over all sentences they lose a long one now and then, which no second look would bring back.
 */
const NARROW = { beam: 1e-40, pbeam: 1e-40, wbeam: 1e-25 } as const;
/** How much better, for each frame, a sentence of the whole grammar must fit than an expected one to be taken instead. */
const EXPECTED_FIRST = 0.1;
/** How much less, for each frame, another sentence may fit and still be what was said. */
const NEAR = 1;

/**
 * Expected sentences first, all sentences as a second look at the kept sound, both held against a phone loop. Blocks
 * while it computes: it belongs in a worker.
 */
export class Recogniser {
  readonly #expected: GrammarDecoder;
  readonly #everything: GrammarDecoder;
  readonly #loop: GrammarDecoder;
  readonly #gate: Gate;
  #tight = false;
  #alone = false;
  #kept: Float32Array[] = [];
  /** What the utterance is decoded under. */
  #mean: readonly number[];
  /** The mean of its own sound, once looked at. */
  #own: readonly number[] | undefined;

  private constructor(decoders: readonly [GrammarDecoder, GrammarDecoder, GrammarDecoder], gate: Gate) {
    [this.#expected, this.#everything, this.#loop] = decoders;
    this.#gate = gate;
    this.#mean = gate.mean;
  }

  /** @throws ListeningError `model-missing` */
  static async open(
    module: SpeechModule,
    model: SpeechModel,
    pronunciations: Pronunciations,
    gate: Gate,
  ): Promise<Recogniser> {
    const decoders = [
      await GrammarDecoder.open(module, model, pronunciations, NARROW),
      await GrammarDecoder.open(module, model, pronunciations),
      await GrammarDecoder.open(module, model, PHONE_WORDS, NARROW),
    ] as const;
    decoders[2].setGrammar(PHONE_LOOP);
    return new Recogniser(decoders, gate);
  }

  /** Every sentence there is. Takes a quarter of a second. @throws ListeningError `grammar-unknown-word`, `grammar-broken` */
  setEverything(jsgf: string): void {
    this.#everything.setGrammar(jsgf);
  }

  /**
   * The sentences expected now; undefined: none more than others. Not while an utterance is open.
   * @param alone nothing else is heeded: no second look by all sentences
   */
  setExpected(jsgf: string | undefined, alone = false): void {
    if (jsgf !== undefined) this.#expected.setGrammar(jsgf);
    this.#tight = jsgf !== undefined;
    this.#alone = this.#tight && alone;
  }

  begin(): void {
    const last = this.#own;
    if (last !== undefined)
      this.#mean = this.#mean.map((value, index) => value + FOLLOW * ((last[index] ?? 0) - value));
    this.#own = undefined;
    this.#kept = [];
    for (const decoder of this.#running) decoder.begin(this.#mean);
  }

  feed(samples: Float32Array): void {
    this.#kept.push(samples);
    for (const decoder of this.#running) decoder.feed(samples);
  }

  /** The best words so far. */
  partial(): string {
    this.#settle();
    return this.#first.partial();
  }

  /** Closes the utterance. @param speechFrames how many 10 ms frames of it were speech */
  end(speechFrames: number): Recognition {
    this.#settle();
    const loop = this.#loop.end();
    const first = this.#first.end();
    const margin = (found: Hypothesis): number =>
      found.text === '' ? Number.NEGATIVE_INFINITY : marginOf(found.score, loop.score, speechFrames);
    const all = { speechFrames, words: this.#everything.words };
    const few = { speechFrames, words: this.#expected.words };
    if (!this.#tight) return this.#judge(first, margin(first), all, 'everything', [], 1);
    if (this.#alone || margin(first) >= this.#gate.sure)
      return this.#judge(first, margin(first), few, 'expected', [], 1);
    const second = this.#again(this.#everything);
    // A sentence that fits clearly worse is no alternative: it is what a closed grammar makes of anything.
    const near = Math.abs(margin(first) - margin(second)) < NEAR;
    const others = near ? [first.text, second.text] : [];
    return margin(first) + EXPECTED_FIRST >= margin(second)
      ? this.#judge(first, margin(first), few, 'expected', others, 2)
      : this.#judge(second, margin(second), all, 'everything', others, 2);
  }

  /** Ends the utterance without a look at it. */
  drop(): void {
    for (const decoder of this.#running) decoder.end();
  }

  close(): void {
    for (const decoder of [this.#expected, this.#everything, this.#loop]) decoder.close();
  }

  get #first(): GrammarDecoder {
    return this.#tight ? this.#expected : this.#everything;
  }

  get #running(): readonly GrammarDecoder[] {
    return [this.#first, this.#loop];
  }

  /** Decodes anew what was kept, where it turns out to have been decoded under too strange a mean. */
  #settle(): void {
    const idle = this.#tight ? this.#everything : this.#expected;
    const sound = joined(this.#kept);
    const own = idle.meanOf(sound);
    this.#own = own;
    if (distance(own, this.#mean) > FAR) {
      this.#mean = own;
      for (const decoder of this.#running) {
        decoder.end();
        decoder.begin(own);
        decoder.feed(sound);
      }
    }
  }

  /** The kept sound once more, under the same mean, so that the scores compare. */
  #again(decoder: GrammarDecoder): Hypothesis {
    decoder.begin(this.#mean);
    decoder.feed(joined(this.#kept));
    return decoder.end();
  }

  #judge(
    { text }: Hypothesis,
    margin: number,
    trial: Trial,
    pass: Recognition['pass'],
    sentences: readonly string[],
    looks: number,
  ): Recognition {
    return {
      text,
      accepted: margin >= cutOf(this.#gate, trial),
      doubtful: margin < this.#gate.doubt,
      confidence: confidenceOf(margin, this.#gate, trial),
      margin,
      pass,
      looks,
      alternatives: sentences.filter((sentence) => sentence !== text && sentence !== ''),
    };
  }
}

const distance = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((value, index) => value - (b[index] ?? 0)));

const lengthOf = (blocks: readonly Float32Array[]): number => blocks.reduce((sum, block) => sum + block.length, 0);

function joined(blocks: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(lengthOf(blocks));
  let at = 0;
  for (const block of blocks) {
    whole.set(block, at);
    at += block.length;
  }
  return whole;
}

import { SAMPLE_RATE } from '../wav.ts';
import { confidenceOf, type Gate, marginOf } from './gate.ts';
import { GrammarDecoder, type Hypothesis, type Pronunciations } from './grammar-decoder.ts';
import { PHONE_LOOP, PHONE_WORDS } from './phone-loop.ts';
import type { SpeechModel, SpeechModule } from './speech-module.ts';

/** What was heard in one stretch of speech. */
export interface Recognition {
  readonly text: string;
  /** False when the sound did not fit the grammar: `text` is then the nearest sentence, not to be believed. */
  readonly accepted: boolean;
  readonly confidence: number;
  /** Score against the phone loop for each frame of speech. */
  readonly margin: number;
  /** Which grammar the words come from. */
  readonly pass: 'expected' | 'everything';
  /** The other grammar's sentence, where it was asked and differs. */
  readonly alternatives: readonly string[];
}

/** Sound held back until the mean cepstrum can be told; then the decoders catch up at once. */
const PRIMING = 0.8 * SAMPLE_RATE;
/** How much better, for each frame, a sentence of the whole grammar must fit than an expected one to be taken instead. */
const EXPECTED_FIRST = 0.1;

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
  #kept: Float32Array[] = [];
  #mean: readonly number[] | undefined;

  private constructor(decoders: readonly [GrammarDecoder, GrammarDecoder, GrammarDecoder], gate: Gate) {
    [this.#expected, this.#everything, this.#loop] = decoders;
    this.#gate = gate;
  }

  /** @throws ListeningError `model-missing` */
  static async open(
    module: SpeechModule,
    model: SpeechModel,
    pronunciations: Pronunciations,
    gate: Gate,
  ): Promise<Recogniser> {
    const decoders = [
      await GrammarDecoder.open(module, model, pronunciations),
      await GrammarDecoder.open(module, model, pronunciations),
      await GrammarDecoder.open(module, model, PHONE_WORDS),
    ] as const;
    decoders[2].setGrammar(PHONE_LOOP);
    return new Recogniser(decoders, gate);
  }

  /** Every sentence there is. Takes a quarter of a second. @throws ListeningError `grammar-unknown-word`, `grammar-broken` */
  setEverything(jsgf: string): void {
    this.#everything.setGrammar(jsgf);
  }

  /** The sentences expected now; undefined: none more than others. Not while an utterance is open. */
  setExpected(jsgf: string | undefined): void {
    if (jsgf !== undefined) this.#expected.setGrammar(jsgf);
    this.#tight = jsgf !== undefined;
  }

  begin(): void {
    this.#kept = [];
    this.#mean = undefined;
  }

  feed(samples: Float32Array): void {
    this.#kept.push(samples);
    if (this.#mean !== undefined) {
      this.#first().feed(samples);
      this.#loop.feed(samples);
    } else if (lengthOf(this.#kept) >= PRIMING) this.#catchUp();
  }

  /** The best words so far. */
  partial(): string {
    if (this.#mean === undefined) this.#catchUp();
    return this.#first().partial();
  }

  /** Closes the utterance. @param speechFrames how many 10 ms frames of it were speech */
  end(speechFrames: number): Recognition {
    if (this.#mean === undefined) this.#catchUp();
    const loop = this.#loop.end();
    const first = this.#first().end();
    const margin = (found: Hypothesis): number =>
      found.text === '' ? Number.NEGATIVE_INFINITY : marginOf(found.score, loop.score, speechFrames);
    if (!this.#tight) return this.#judge(first, margin(first), 'everything', []);
    if (margin(first) >= this.#gate.sure) return this.#judge(first, margin(first), 'expected', []);
    const second = this.#again(this.#everything);
    const others = first.text === second.text ? [] : [first.text, second.text];
    return margin(first) + EXPECTED_FIRST >= margin(second)
      ? this.#judge(first, margin(first), 'expected', others)
      : this.#judge(second, margin(second), 'everything', others);
  }

  close(): void {
    for (const decoder of [this.#expected, this.#everything, this.#loop]) decoder.close();
  }

  #first(): GrammarDecoder {
    return this.#tight ? this.#expected : this.#everything;
  }

  #catchUp(): void {
    const sound = joined(this.#kept);
    const mean = this.#loop.meanOf(sound);
    this.#mean = mean;
    for (const decoder of [this.#first(), this.#loop]) {
      decoder.begin(mean);
      decoder.feed(sound);
    }
  }

  /** The kept sound once more, under the same mean, so that the scores compare. */
  #again(decoder: GrammarDecoder): Hypothesis {
    decoder.begin(this.#mean ?? []);
    decoder.feed(joined(this.#kept));
    return decoder.end();
  }

  #judge({ text }: Hypothesis, margin: number, pass: Recognition['pass'], sentences: readonly string[]): Recognition {
    return {
      text,
      accepted: margin >= this.#gate.reject,
      confidence: confidenceOf(margin, this.#gate),
      margin,
      pass,
      alternatives: sentences.filter((sentence) => sentence !== text && sentence !== ''),
    };
  }
}

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

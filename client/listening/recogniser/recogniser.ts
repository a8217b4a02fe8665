import { type Automaton, follow, sentenceAlone } from './automaton.ts';
import { confidenceOf, cutOf, type Gate, marginOf, type Trial } from './gate.ts';
import { GrammarDecoder, type Hypothesis, type Pronunciations } from './grammar-decoder.ts';
import { PHONE_LOOP, PHONE_WORDS } from './phone-loop.ts';
import { type Recognition, type Rival, type SoFar, textsOf } from './recognition.ts';
import { numberedOf, rivalsOf, type StandsFor } from './rivals.ts';
import type { SpeechModel, SpeechModule } from './speech-module.ts';

/**
 * How far the mean cepstrum of an utterance may lie from the one it was decoded under. Beyond it the utterance is decoded
 * anew under its own: with another voice or microphone that is worth 1 to 4 right in 100 (measured on people), with the
 * same one it would only cost time.
 */
const FAR = 14;
/** After so many samples the mean is looked at first: what is decoded anew then is little, and nobody waits for it. */
const EARLY = 14_400;
/** How much the mean of each utterance counts in what the next is decoded under. */
const FOLLOW = 0.2;
/**
 * Narrower beams than the module's own (1e-48, 7e-29) for the expected sentences and the loop: half the time in noise.
 * Over all sentences they lose a long one now and then, which no second look would bring back.
 */
const NARROW = { beam: 1e-40, pbeam: 1e-40, wbeam: 1e-25 } as const;
/**
 * How much surer an expected sentence without a number must be to be taken without a second look: answers are short and
 * alike ("thermostat is on" was sure at -1.1 where "thermostat is calling" was said), and no rival of theirs is tried.
 */
const SURE_ORDER = 4;
/** How much better, for each frame, a sentence of the whole grammar must fit than an expected one to be taken instead. */
const EXPECTED_FIRST = 0.1;
/** Words that numbers are made of: a sentence of nothing else is held against so many, not against all orders too. */
const NUMBERS = 30;
/** How much less, for each frame, another sentence may fit and still be what was said. */
const NEAR = 1;
/**
 * The same where the other one is a reading that is waited for: half a number, or one read by single digits, is easily
 * taken for an order ("one five five" became "was that bad"). So far below its cut it is asked, not rejected. In margin.
 */
const NEAR_NUMBER = 3;
const ASKED_BELOW = 5;
/** So many words may be half of a number that was misheard. */
export const FEW_WORDS = 3;
/** How many times farther behind a rival must be to be left unasked where the sentence is not sure. */
const UNSURE_RIVAL = 2;

/**
 * Expected sentences first, all sentences as a second look at the kept sound, both held against a phone loop. Blocks
 * while it computes: it belongs in a worker.
 */
export class Recogniser {
  readonly #expected: GrammarDecoder;
  readonly #everything: GrammarDecoder;
  /** Follows the phone loop, and between two utterances the rivals of the last. */
  readonly #loop: GrammarDecoder;
  readonly #gate: Gate;
  readonly #standsFor: StandsFor;
  #tight = false;
  /** Of what is expected, what holds a number; made when it is first asked for. */
  #numbered: { readonly network: Automaton | undefined } | undefined;
  #alone = false;
  #kept: Float32Array[] = [];
  /** What the utterance is decoded under. */
  #mean: readonly number[];
  /** The mean of its own sound, once looked at. */
  #own: readonly number[] | undefined;

  private constructor(
    decoders: readonly [GrammarDecoder, GrammarDecoder, GrammarDecoder],
    gate: Gate,
    standsFor: StandsFor,
  ) {
    [this.#expected, this.#everything, this.#loop] = decoders;
    this.#gate = gate;
    this.#standsFor = standsFor;
    this.#mean = gate.mean;
  }

  /**
   * @param standsFor which words are tried in each other's place
   * @throws ListeningError `model-missing`
   */
  static async open(
    module: SpeechModule,
    model: SpeechModel,
    pronunciations: Pronunciations,
    gate: Gate,
    standsFor: StandsFor = () => undefined,
  ): Promise<Recogniser> {
    const decoders = [
      await GrammarDecoder.open(module, model, pronunciations, NARROW),
      await GrammarDecoder.open(module, model, pronunciations),
      await GrammarDecoder.open(module, model, { ...PHONE_WORDS, ...pronunciations }, NARROW),
    ] as const;
    decoders[2].setNetwork(PHONE_LOOP);
    return new Recogniser(decoders, gate, standsFor);
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
    this.#numbered = undefined;
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
    const before = lengthOf(this.#kept);
    this.#kept.push(samples);
    for (const decoder of this.#running) decoder.feed(samples);
    if (before < EARLY && before + samples.length >= EARLY) this.#settle();
  }

  /** The best words so far. @param speechFrames how many 10 ms frames of the utterance were speech up to now */
  partial(speechFrames: number): SoFar {
    this.#settle();
    const { text, score } = this.#first.partial();
    const margin = marginOf(score, this.#loop.partial().score, speechFrames);
    return { text, margin, sure: margin >= this.#gate.sure, fits: margin >= this.#gate.doubt };
  }

  /** Closes the utterance. @param speechFrames how many 10 ms frames of it were speech */
  end(speechFrames: number): Recognition {
    this.#settle();
    const loop = this.#loop.end();
    const found = (by: GrammarDecoder, { text, score }: Hypothesis): Found => {
      const margin = text === '' ? Number.NEGATIVE_INFINITY : marginOf(score, loop.score, speechFrames);
      return { text, score, margin, by, trial: { speechFrames, words: this.#isNumber(text) ? NUMBERS : by.words } };
    };
    const first = found(this.#first, this.#first.end());
    const sure = this.#gate.sure + (this.#hasNumber(first.text) ? 0 : SURE_ORDER);
    if (!this.#tight || this.#alone || first.margin >= sure) return this.#judge(first, [], 1);
    const second = found(this.#everything, this.#again(this.#everything));
    // A reading that is waited for and nearly fits is asked before what nobody waits for and fits no better is given up.
    const isFirst = first.margin + EXPECTED_FIRST >= second.margin || (this.#mayBe(first) && !this.#fits(second));
    const [best, other] = isFirst ? [first, second] : [second, first];
    // A sentence that fits clearly worse is no rival: it is what a closed grammar makes of anything.
    const distance = this.#mayBe(other) ? NEAR_NUMBER : NEAR;
    const near = Math.abs(first.margin - second.margin) < distance && other.text !== best.text && other.text !== '';
    const besides = near ? [other] : [];
    if (best.text !== '' && !this.#hasNumber(best.text)) besides.push(...this.#readingsBeside(best, found));
    return this.#judge(
      best,
      besides.map(({ text, score }) => ({ text, behind: best.score - score })),
      2,
    );
  }

  /** How well each sentence fits a sound, by itself; only their differences count. Not while an utterance is open. */
  fitsOf(sound: Float32Array, sentences: readonly string[]): readonly number[] {
    const own = this.#loop.meanOf(sound);
    const mean = distance(own, this.#mean) > FAR ? own : this.#mean;
    return sentences.map((sentence) => this.#fitOf(sentenceAlone(sentence), sound, mean).score);
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

  #judge(best: Found, near: readonly Rival[], looks: number): Recognition {
    const { text, margin, trial } = best;
    const fits = this.#fits(best);
    const accepted = fits || this.#mayBe(best);
    // What nobody waits for needs to be sure beside what is; so does a number of few words, which may be half of one.
    const isHalf = this.#hasNumber(text) && text.split(' ').length <= FEW_WORDS;
    const needed = this.#tight && (best.by !== this.#expected || isHalf) ? this.#gate.sure : this.#gate.doubt;
    const rival = accepted ? this.#rivalOf(best) : undefined;
    const clear = this.#gate.rival * (margin < this.#gate.sure ? UNSURE_RIVAL : 1);
    const isNear = rival !== undefined && rival.behind < clear;
    return {
      text,
      accepted,
      doubtful: margin < needed || !fits,
      confidence: confidenceOf(margin, this.#gate, trial),
      margin,
      pass: best.by === this.#expected ? 'expected' : 'everything',
      looks,
      alternatives: textsOf(isNear ? [...near, rival] : near),
      rivals: rival === undefined ? near : [...near, rival],
    };
  }

  #fits({ margin, trial }: Found): boolean {
    return margin >= cutOf(this.#gate, trial);
  }

  /** The best reading that is waited for, where an order was heard in its stead and fits little better. */
  #readingsBeside(order: Found, found: (by: GrammarDecoder, hypothesis: Hypothesis) => Found): readonly Found[] {
    const expected = this.#expected.network;
    this.#numbered ??= { network: expected && numberedOf(expected, this.#standsFor) };
    const { network } = this.#numbered;
    if (network === undefined || order.margin >= this.#gate.sure) return [];
    const reading = found(this.#expected, this.#fitOf(network, joined(this.#kept), this.#mean));
    return this.#mayBe(reading) && order.margin - reading.margin < NEAR_NUMBER ? [reading] : [];
  }

  /** Whether it is a reading that is waited for, and fits so nearly that it is worth a question. */
  #mayBe({ text, margin, trial, by }: Found): boolean {
    const isExpected = this.#tight && !this.#alone && by === this.#expected && this.#hasNumber(text);
    return isExpected && margin >= cutOf(this.#gate, trial) - ASKED_BELOW;
  }

  #hasNumber(text: string): boolean {
    return text.split(' ').some((word) => this.#standsFor(word)?.kind === 'number');
  }

  #isNumber(text: string): boolean {
    return text !== '' && text.split(' ').every((word) => this.#standsFor(word)?.kind === 'number');
  }

  /** The same sentence with another number or opposite in one place, be it expected or not. */
  #rivalOf({ text, by }: Found): Rival | undefined {
    const all = this.#everything.network;
    const network = all !== undefined && follow(all, text).whole ? all : by.network;
    const rivals = network === undefined ? undefined : rivalsOf(network, text, this.#standsFor);
    if (rivals === undefined) return undefined;
    const sound = joined(this.#kept);
    const [own, rival] = [sentenceAlone(text), rivals].map((one) => this.#fitOf(one, sound, this.#mean));
    return own === undefined || rival === undefined || rival.text === ''
      ? undefined
      : { text: rival.text, behind: own.score - rival.score };
  }

  /** By a small network. The loop is idle after an utterance, and lends its decoder. */
  #fitOf(network: Automaton, sound: Float32Array, mean: readonly number[]): Hypothesis {
    this.#loop.setNetwork(network);
    this.#loop.begin(mean);
    this.#loop.feed(sound);
    const found = this.#loop.end();
    this.#loop.setNetwork(PHONE_LOOP);
    return found;
  }
}

/** The best sentence of one grammar. */
interface Found extends Hypothesis {
  readonly margin: number;
  readonly by: GrammarDecoder;
  readonly trial: Trial;
}

const distance = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((value, index) => value - (b[index] ?? 0)));

const lengthOf = (blocks: readonly Float32Array[]): number => blocks.reduce((sum, block) => sum + block.length, 0);

export function joined(blocks: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(lengthOf(blocks));
  let at = 0;
  for (const block of blocks) {
    whole.set(block, at);
    at += block.length;
  }
  return whole;
}

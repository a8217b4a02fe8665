import { sentenceAlone } from './automaton.ts';
import type { Gate } from './gate.ts';
import { GrammarDecoder, type Pronunciations } from './grammar-decoder.ts';
import { distance, FAR, joined, NARROW, type Recogniser, type Recognition, type Rival, textsOf } from './recogniser.ts';
import type { SpeechModel, SpeechModule } from './speech-module.ts';

/** What hearing needs of a recogniser, be it one model or two. */
export type Recognising = Pick<
  Recogniser,
  'setEverything' | 'setExpected' | 'begin' | 'feed' | 'partial' | 'end' | 'close'
>;

/** Share of its confidence that is left to a sentence which may as well be another. */
const DOUBTED = 0.5;
/** A rival that is so far behind by the first model's score is not put to the second. */
const CLEAR = 300;
/** By how much of the score both together must put a sentence before a rival; else both are asked. */
const CLEAR_TO_BOTH = 200;

/**
 * Two acoustic models, which err in different places. One hears; where a rival comes near to what it heard, the other
 * says which of them fits the sound better. What is not clear to both together is given with its rival, so that it is
 * asked and not logged. The second one works only then, over two sentences: a twentieth of the time of hearing.
 */
export class TwoModels implements Recognising {
  readonly #first: Recogniser;
  readonly #second: GrammarDecoder;
  readonly #mean: readonly number[];
  #kept: Float32Array[] = [];

  private constructor(first: Recogniser, second: GrammarDecoder, mean: readonly number[]) {
    this.#first = first;
    this.#second = second;
    this.#mean = mean;
  }

  /** @param first which hears @throws ListeningError `model-missing` */
  static async open(
    first: Recogniser,
    module: SpeechModule,
    model: SpeechModel,
    pronunciations: Pronunciations,
    gate: Gate,
  ): Promise<TwoModels> {
    return new TwoModels(first, await GrammarDecoder.open(module, model, pronunciations, NARROW), gate.mean);
  }

  setEverything(jsgf: string): void {
    this.#first.setEverything(jsgf);
  }

  setExpected(jsgf: string | undefined, alone?: boolean): void {
    this.#first.setExpected(jsgf, alone);
  }

  begin(): void {
    this.#kept = [];
    this.#first.begin();
  }

  feed(samples: Float32Array): void {
    this.#kept.push(samples);
    this.#first.feed(samples);
  }

  partial(): string {
    return this.#first.partial();
  }

  end(speechFrames: number): Recognition {
    const heard = this.#first.end(speechFrames);
    const near = heard.rivals.filter(({ behind }) => behind < CLEAR);
    if (!heard.accepted || near.length === 0) return { ...heard, alternatives: [] };
    const left = this.#weighed(heard.text, near).filter(({ behind }) => behind < CLEAR_TO_BOTH);
    if (left.length === 0) return { ...heard, alternatives: [] };
    return { ...heard, confidence: DOUBTED * heard.confidence, alternatives: textsOf(left) };
  }

  close(): void {
    this.#first.close();
    this.#second.close();
  }

  /** How far behind each is by both scores together. */
  #weighed(text: string, rivals: readonly Rival[]): readonly Rival[] {
    const sound = joined(this.#kept);
    const own = this.#second.meanOf(sound);
    const mean = distance(own, this.#mean) > FAR ? own : this.#mean;
    const fitOf = (sentence: string): number => {
      this.#second.setNetwork(sentenceAlone(sentence));
      this.#second.begin(mean);
      this.#second.feed(sound);
      return this.#second.end().score;
    };
    const fit = fitOf(text);
    return rivals.map((rival) => ({ text: rival.text, behind: rival.behind + fit - fitOf(rival.text) }));
  }
}

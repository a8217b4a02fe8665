import type { Recogniser, Recognition } from './recogniser.ts';

/** What hearing needs of a recogniser, be it one model or two. */
export type Recognising = Pick<
  Recogniser,
  'setEverything' | 'setExpected' | 'begin' | 'feed' | 'partial' | 'drop' | 'end' | 'close'
>;

/** Share of its confidence that is left to a sentence which the other model heard otherwise. */
const DISAGREED = 0.5;

/**
 * Two acoustic models hear the same sound. They err in different places: what both heard is seldom wrong, and what only
 * one heard is given as doubtful, with the other's sentence as the alternative, so that it is asked and not logged.
 */
export class TwoModels implements Recognising {
  readonly #better: Recognising;
  readonly #other: Recognising;

  /** @param better whose sentence counts where they differ */
  constructor(better: Recognising, other: Recognising) {
    this.#better = better;
    this.#other = other;
  }

  setEverything(jsgf: string): void {
    this.#each((model) => model.setEverything(jsgf));
  }

  setExpected(jsgf: string | undefined, alone?: boolean): void {
    this.#each((model) => model.setExpected(jsgf, alone));
  }

  begin(): void {
    this.#each((model) => model.begin());
  }

  feed(samples: Float32Array): void {
    this.#each((model) => model.feed(samples));
  }

  partial(): string {
    return this.#better.partial();
  }

  end(speechFrames: number): Recognition {
    const other = this.#other.end(speechFrames);
    const best = this.#better.end(speechFrames);
    // One that found nothing has no say in the words, only in how sure they are.
    if (!best.accepted && other.accepted) return doubted(other, best);
    return best.text === other.text && other.accepted ? { ...best, doubtful: false } : doubted(best, other);
  }

  drop(): void {
    this.#each((model) => model.drop());
  }

  close(): void {
    this.#each((model) => model.close());
  }

  #each(act: (model: Recognising) => void): void {
    for (const model of [this.#better, this.#other]) act(model);
  }
}

function doubted(taken: Recognition, other: Recognition): Recognition {
  const sentences = [...taken.alternatives, other.text, ...other.alternatives];
  return {
    ...taken,
    confidence: taken.confidence * DISAGREED,
    alternatives: [...new Set(sentences)].filter((sentence) => sentence !== taken.text && sentence !== ''),
  };
}

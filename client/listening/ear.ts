import type { Expectation } from '../../grammar/phrases/meaning.ts';

/** One stretch of speech turned to words. Times are milliseconds on the ear's own clock. */
export interface Utterance {
  /** Unique for each utterance; a second delivery under the same id is dropped by the ear. */
  readonly id: string;
  readonly ear: 'offline' | 'browser' | 'wav' | 'typed';
  readonly text: string;
  /** Other hypotheses, best first (the browser recogniser's n-best, a second model's). */
  readonly alternatives: readonly string[];
  /** 0…1; 1 for typed text. */
  readonly confidence: number;
  /** False when the sound did not fit the grammar (speech outside it, noise): `text` is then not to be believed. */
  readonly accepted: boolean;
  /** Taken, but heard so badly that a value in it is to be asked; false where the ear cannot tell. */
  readonly doubtful?: boolean;
  /** Holds the words of the utterance before it too: that one was given, and then went on. */
  readonly continues?: true;
  /** Its sound, -1…1 at 16 kHz, from an ear that was asked for it. */
  readonly samples?: Float32Array;
  readonly startedMs: number;
  readonly endedMs: number;
  /** From the last speech sample to the words, as if fed in real time. */
  readonly verdictMs: number;
  /** Decoding time ÷ sound time. */
  readonly realTimeFactor: number;
}

/** What can be wrong at the edge of hearing; every code has its sentence in listening-error.ts. */
export type EarFault =
  | 'no-microphone'
  | 'permission-refused'
  | 'model-missing'
  | 'grammar-unknown-word'
  | 'grammar-broken'
  | 'file-not-found'
  | 'not-a-wav'
  | 'wav-not-supported'
  | 'wav-empty'
  | 'wav-cut-short'
  | 'nothing-heard'
  | 'device-lost'
  | 'recogniser-missing'
  | 'recogniser-refused'
  | 'recogniser-unreachable'
  | 'recogniser-silent'
  | 'language-missing';

/** sound → utterance. One contract suite runs on every implementation. */
export interface Ear {
  readonly kind: Utterance['ear'];
  /** Loads what it needs and begins to listen; utterances and faults come through the callbacks, in order. */
  start(callbacks: {
    onUtterance(utterance: Utterance): void;
    onFault(fault: EarFault, detail: string): void;
  }): Promise<void>;
  /** Tells the ear what is expected next (tight grammar first). Takes effect with the next utterance. */
  expect(expectation: Expectation): void;
  stop(): Promise<void>;
}

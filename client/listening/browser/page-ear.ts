import type { Ear } from '../ear.ts';

export interface MicrophoneState {
  readonly ear: 'off' | 'starting' | 'listening' | 'hearing' | 'failed';
  /** What went wrong, and what to do. */
  readonly fault?: string;
}

/** An ear in a page: one that can be watched, told to heed only the urgent words, or to attend to nothing. */
export interface PageEar extends Ear {
  state(): MicrophoneState;
  /** @param spoken what the mouth says, while only the urgent words are heeded */
  heed(what: 'everything' | 'urgent', spoken?: string): void;
  /** Whether what is said counts just now. While it does not, "stop" alone is heard; the decoder stays warm. */
  attend(on: boolean): void;
}

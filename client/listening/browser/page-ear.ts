import type { Ear } from '../ear.ts';

export interface MicrophoneState {
  readonly ear: 'off' | 'starting' | 'listening' | 'hearing' | 'failed';
  /** What went wrong, and what to do. */
  readonly fault?: string;
}

/** An ear in a page: one that can be watched, and told to heed only the urgent words while the mouth speaks. */
export interface PageEar extends Ear {
  state(): MicrophoneState;
  heed(what: 'everything' | 'urgent'): void;
}

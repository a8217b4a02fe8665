import type { SaidAloud } from '../profile/as-heard.ts';
import type { Learnt } from '../profile/learn-voice.ts';
import type { ModelChoice } from '../recogniser/speech-module.ts';

/** What the page gives the learning worker, once. */
export interface LearnOrder {
  readonly models: ModelChoice;
  readonly read: readonly SaidAloud[];
}

export type LearnNews =
  /** How much of it is done, 0…1. */
  | { readonly news: 'share'; readonly share: number }
  | { readonly news: 'learnt'; readonly learnt: Learnt }
  | { readonly news: 'fault'; readonly detail: string };

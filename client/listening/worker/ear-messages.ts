import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { EarFault, Utterance } from '../ear.ts';
import type { ModelChoice } from '../recogniser/speech-module.ts';

/** What the page tells the decoder worker. Sound does not come this way: it comes over the port of `listen`. */
export type EarOrder =
  /** Load the recogniser, then take sound from the port: blocks of 16 kHz samples, -1…1. */
  | { readonly order: 'listen'; readonly port: MessagePort; readonly models: ModelChoice }
  | { readonly order: 'expect'; readonly expectation: Expectation }
  /** While the mouth speaks only the urgent words are heeded, but for those that it says itself. */
  | { readonly order: 'heed'; readonly what: 'everything' | 'urgent'; readonly spoken: string }
  /** The mouth begins to play these samples, 16 kHz; none: it was cut short. */
  | { readonly order: 'plays'; readonly samples: Float32Array }
  /** The sound of each utterance is given along with it, from now on. */
  | { readonly order: 'give-sound'; readonly on: boolean }
  /** While it does not attend, "stop" alone is heard. What was begun to be said before is still heard out. */
  | { readonly order: 'attend'; readonly on: boolean };

export type EarNews =
  | { readonly news: 'ready' }
  | { readonly news: 'utterance'; readonly utterance: Utterance }
  | { readonly news: 'fault'; readonly fault: EarFault; readonly detail: string }
  /** Whether somebody is heard to speak just now. */
  | { readonly news: 'speech'; readonly on: boolean }
  /** No sound has come for a while, or it has come again after so many seconds. */
  | { readonly news: 'no-sound' }
  | { readonly news: 'sound-again'; readonly seconds: number };

import type { PhraseNow } from '../../../grammar/export/find-phrases.ts';
import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';

/** What the page asks of the grammar: what a sentence means, or what may be said at a moment. */
export type GrammarAsked =
  | { readonly text: string; readonly expectation: Expectation; readonly options: UnderstandOptions }
  | { readonly phrasesAt: Expectation };

export type GrammarAnswer = { readonly understood: Understanding } | { readonly phrases: readonly PhraseNow[] };

import { phrasesNow } from '../../../grammar/export/phrases-now.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { GrammarAnswer, GrammarAsked } from './grammar-asked.ts';

/** Answers from the grammar, in whatever thread. */
export function answerGrammar(asked: GrammarAsked): GrammarAnswer {
  if ('phrasesAt' in asked) return { phrases: phrasesNow(asked.phrasesAt) };
  return { understood: understand(asked.text, asked.expectation, asked.options) };
}

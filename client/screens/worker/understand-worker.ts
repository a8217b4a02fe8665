import { understand } from '../../../grammar/phrases/understand.ts';
import { answerGrammar } from './answer-grammar.ts';
import type { GrammarAnswer, GrammarAsked } from './grammar-asked.ts';
import type { Numbered, NumberedReply } from './numbered.ts';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data: { number, asked } }: MessageEvent<Numbered<GrammarAsked>>) => {
  self.postMessage({ number, answer: answerGrammar(asked) } satisfies NumberedReply<GrammarAnswer>);
};

// The network is built before the first sentence asks for it.
understand('');

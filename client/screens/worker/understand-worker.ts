import type { Understanding } from '../../../grammar/phrases/meaning.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { Numbered, NumberedReply } from './numbered.ts';
import type { UnderstandAsked } from './understand-asked.ts';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data: { number, asked } }: MessageEvent<Numbered<UnderstandAsked>>) => {
  const answer = understand(asked.text, asked.expectation, asked.options);
  self.postMessage({ number, answer } satisfies NumberedReply<Understanding>);
};

// The network is built before the first sentence asks for it.
understand('');

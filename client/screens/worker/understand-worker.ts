import { understand } from '../../../grammar/phrases/understand.ts';
import type { UnderstandQuestion, UnderstandReply } from './understand-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data }: MessageEvent<UnderstandQuestion>) => {
  const { number, text, expectation, options } = data;
  self.postMessage({ number, understanding: understand(text, expectation, options) } satisfies UnderstandReply);
};

// The network is built before the first sentence asks for it.
understand('');

import { type KeptVisit, keptVisitOf } from '../glance/kept-visit.ts';
import type { Numbered, NumberedReply } from './numbered.ts';

declare const self: DedicatedWorkerGlobalScope;

/** Folds the bodies of one record after another. */
self.onmessage = ({ data: { number, asked } }: MessageEvent<Numbered<readonly string[]>>) => {
  self.postMessage({ number, answer: keptVisitOf(asked) } satisfies NumberedReply<KeptVisit>);
};

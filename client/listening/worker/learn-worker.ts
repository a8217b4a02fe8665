import { learnFromReading } from '../profile/learn-from-reading.ts';
import type { LearnNews, LearnOrder } from './learn-messages.ts';
import { withModels } from './load-models.ts';

declare const self: DedicatedWorkerGlobalScope;

/** Learns a voice in a thread of its own: the page shows how far it is, and can end it. */
self.onmessage = ({ data: { models, read } }: MessageEvent<LearnOrder>) => {
  const tell = (news: LearnNews) => self.postMessage(news);
  withModels(models, (parts) => learnFromReading(parts, read, (share) => tell({ news: 'share', share }))).then(
    (learnt) => tell({ news: 'learnt', learnt }),
    (error: unknown) => tell({ news: 'fault', detail: error instanceof Error ? error.message : String(error) }),
  );
};

import type { Entry, StreamId } from '../../grammar/visit/envelope.ts';
import type { LinkOptions } from './link.ts';
import { watchVisit } from './watch-visit.ts';

/** What the server holds of a stream at this moment, in order. Waits for the network; rejects where it is refused. */
export function fetchStream(link: LinkOptions, stream: StreamId): Promise<readonly Entry[]> {
  return new Promise((resolve, reject) => {
    const held: Entry[] = [];
    const watch = watchVisit({
      ...link,
      company: stream.company,
      visit: stream.visit,
      events: (events, level) => {
        for (const { device, epoch, seq, hash, body } of events) {
          if (device === stream.device && epoch === stream.epoch) held.push({ seq, hash, body });
        }
        if (!level) return;
        resolve(held);
        watch.stop();
      },
      changed: (state) => {
        if (state.link === 'stopped') reject(new Error(state.sentence));
      },
    });
  });
}

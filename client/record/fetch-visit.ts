import type { WatchedEvent } from '../../grammar/visit/messages.ts';
import type { LinkOptions } from './link.ts';
import { watchVisit } from './watch-visit.ts';

/** What the server holds of a visit at this moment, of all its devices. Waits for the network; rejects where it is refused. */
export function fetchVisit(
  link: LinkOptions,
  { company, visit }: { readonly company: string; readonly visit: string },
): Promise<readonly WatchedEvent[]> {
  return new Promise((resolve, reject) => {
    const held: WatchedEvent[] = [];
    const watch = watchVisit({
      ...link,
      company,
      visit,
      events: (events, level) => {
        held.push(...events);
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

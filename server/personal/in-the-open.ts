import { isInTheOpen } from '../../grammar/visit/personal.ts';
import type { EventStore } from '../store/event-store.ts';

/** Between so many events others are served. */
const EVENTS_A_PAGE = 500;

/** How many entries of a visit hold personal texts that nobody sealed: erasing does not reach them. */
export async function countInTheOpen(
  store: Pick<EventStore, 'events'>,
  company: string,
  visit: string,
): Promise<number> {
  let count = 0;
  for (let after = 0; ; ) {
    const page = await store.events(company, visit, { after, limit: EVENTS_A_PAGE });
    count += page.filter(({ body }) => isInTheOpen(body)).length;
    const last = page.at(-1);
    if (last === undefined || page.length < EVENTS_A_PAGE) return count;
    after = last.arrival;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

/** In words, of one or more. */
export function openWords(count: number): string {
  const what = count === 1 ? '1 entry was' : `${count} entries were`;
  return `${what} written in the open: erasing does not reach what is personal in ${count === 1 ? 'it' : 'them'}.`;
}

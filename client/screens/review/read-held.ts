import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';

interface EventsPage {
  readonly events: readonly WatchedEvent[];
  readonly next?: number;
}

/** So many events are asked for at once: what has come is gone through while the server reads the next. */
const A_PAGE = 2_500;
/** While the page's program is on its way nothing is gone through yet: as many as the server gives at once. */
const A_PAGE_AHEAD = 10_000;

/** By visit. */
const ahead = new Map<string, Promise<ServerAnswer<EventsPage>>>();

const ask = (visit: string, after: number, limit: number) =>
  askServer<EventsPage>('GET', `/api/visits/${encodeURIComponent(visit)}/events?after=${after}&limit=${limit}`);

/** Asks for the beginning of a visit while the program of its page is still on its way. */
export function readAhead(visit: string): void {
  ahead.set(visit, ask(visit, 0, A_PAGE_AHEAD));
}

/** What the server holds already, page by page: a watch by itself takes a long visit in small pieces. */
export async function readHeld(visit: string, take: (page: readonly WatchedEvent[]) => void): Promise<void> {
  for (let after: number | undefined = 0; after !== undefined; ) {
    const asked: Promise<ServerAnswer<EventsPage>> | undefined = after === 0 ? ahead.get(visit) : undefined;
    ahead.delete(visit);
    const answer: ServerAnswer<EventsPage> = await (asked ?? ask(visit, after, A_PAGE));
    // What cannot be read in this way the watch brings, or tells why not.
    if (!answer.ok) return;
    take(answer.body.events);
    after = answer.body.next;
  }
}

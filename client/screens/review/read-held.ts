import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';

interface EventsPage {
  readonly events: readonly WatchedEvent[];
  readonly next?: number;
}

/** So many events are asked for at once: what has come is gone through while the server reads the next. */
const A_PAGE = 2_500;

const ahead = new Map<string, Promise<ServerAnswer<EventsPage>>>();

const pathOf = (visit: string, after: number): string =>
  `/api/visits/${encodeURIComponent(visit)}/events?after=${after}&limit=${A_PAGE}`;

/** Asks for the beginning of a visit while the program of its page is still on its way. */
export function readAhead(visit: string): void {
  const path = pathOf(visit, 0);
  ahead.set(path, askServer<EventsPage>('GET', path));
}

/** What the server holds already, page by page: a watch by itself takes a long visit in small pieces. */
export async function readHeld(visit: string, take: (page: readonly WatchedEvent[]) => void): Promise<void> {
  for (let after: number | undefined = 0; after !== undefined; ) {
    const path = pathOf(visit, after);
    const asked: Promise<ServerAnswer<EventsPage>> = ahead.get(path) ?? askServer<EventsPage>('GET', path);
    ahead.delete(path);
    const answer = await asked;
    // What cannot be read in this way the watch brings, or tells why not.
    if (!answer.ok) return;
    take(answer.body.events);
    after = answer.body.next;
  }
}

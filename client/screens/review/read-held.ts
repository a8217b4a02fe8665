import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';

interface EventsPage {
  readonly events: readonly WatchedEvent[];
  readonly next?: number;
}

/** A page of events, and the one behind it, which is asked for as soon as this one is here. */
interface Asked {
  readonly answer: ServerAnswer<EventsPage>;
  readonly behind?: Promise<Asked>;
}

/** So many events are asked for at once: what has come is gone through while the server reads the next. */
const A_PAGE = 2_500;

/** By visit. */
const ahead = new Map<string, Promise<Asked>>();

async function askOn(visit: string, after: number): Promise<Asked> {
  const path = `/api/visits/${encodeURIComponent(visit)}/events?after=${after}&limit=${A_PAGE}`;
  const answer = await askServer<EventsPage>('GET', path);
  const next = answer.ok ? answer.body.next : undefined;
  return next === undefined ? { answer } : { answer, behind: askOn(visit, next) };
}

/** Asks for a visit while the program of its page is still on its way. */
export function readAhead(visit: string): void {
  ahead.set(visit, askOn(visit, 0));
}

/**
 * What the server holds already, page by page: a watch by itself takes a long visit in small pieces.
 *
 * @param take is given each page, and whether another is on its way
 */
export async function readHeld(
  visit: string,
  take: (page: readonly WatchedEvent[], goesOn: boolean) => void,
): Promise<void> {
  let asked: Promise<Asked> | undefined = ahead.get(visit) ?? askOn(visit, 0);
  ahead.delete(visit);
  while (asked !== undefined) {
    const { answer, behind }: Asked = await asked;
    // What cannot be read in this way the watch brings, or tells why not.
    if (!answer.ok) return;
    take(answer.body.events, behind !== undefined);
    asked = behind;
  }
}

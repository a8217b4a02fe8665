import { useEffect, useMemo, useState } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { joinDevices } from '../../../grammar/visit/join-devices.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import type { LinkState } from '../../record/link.ts';
import { type VisitWatch, watchVisit } from '../../record/watch-visit.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';
import { readingCompany } from '../session/who.ts';

export interface WatchedVisit {
  /** The visit: what its device wrote, and remarks from elsewhere. */
  readonly events: readonly VisitEvent[];
  /** How many entries of other devices do not count: of these only remarks are taken. */
  readonly others: number;
  /** Everything the server had is here; what comes from now on is live. */
  readonly level: boolean;
  /** Entries that have come so far, also while they are not shown yet. */
  readonly come: number;
  readonly link: LinkState;
}

/** A visit as the server holds it, growing as it grows. What is there already is shown at once, when all of it is here. */
export function useWatchedVisit(visit: string): WatchedVisit {
  const [entries, setEntries] = useState<readonly WatchedEvent[]>([]);
  const [come, setCome] = useState(0);
  const [level, setLevel] = useState(false);
  const [link, setLink] = useState<LinkState>({ link: 'connecting' });
  useEffect(() => {
    setEntries([]);
    setLevel(false);
    let watch: VisitWatch | undefined;
    let gone = false;
    let isLevel = false;
    const all: WatchedEvent[] = [];
    const take = (fresh: readonly WatchedEvent[]) => {
      all.push(...fresh);
      setCome(all.length);
    };
    void Promise.all([readingCompany(), readHeld(visit, (page) => !gone && take(page))]).then(([company]) => {
      if (gone) return;
      performance.mark('readback.replay-read');
      let shown = all.length;
      setEntries([...all]);
      watch = watchVisit({
        company,
        visit,
        held: all,
        ...browserLink(),
        events: (fresh, now) => {
          take(fresh);
          isLevel ||= now;
          if (isLevel && all.length !== shown) setEntries([...all]);
          if (isLevel) shown = all.length;
          if (now) setLevel(true);
        },
        changed: setLink,
      });
    });
    const forget = onReachable(() => watch?.retryNow());
    return () => {
      gone = true;
      forget();
      watch?.stop();
    };
  }, [visit]);
  const joined = useMemo(() => joinEntries(entries), [entries]);
  return { ...joined, come, level, link };
}

/** So many events are asked for at once. */
const A_PAGE = 5_000;

/** What the server holds already, page by page: a watch by itself takes a long visit in small pieces. */
async function readHeld(visit: string, take: (page: readonly WatchedEvent[]) => void): Promise<void> {
  for (let after: number | undefined = 0; after !== undefined; ) {
    const path: string = `/api/visits/${encodeURIComponent(visit)}/events?after=${after}&limit=${A_PAGE}`;
    const answer: ServerAnswer<EventsPage> = await askServer<EventsPage>('GET', path);
    // What cannot be read in this way the watch brings, or tells why not.
    if (!answer.ok) return;
    take(answer.body.events);
    after = answer.body.next;
  }
}

interface EventsPage {
  readonly events: readonly WatchedEvent[];
  readonly next?: number;
}

/** By device, in the order in which the server first heard of each. */
function joinEntries(entries: readonly WatchedEvent[]): Pick<WatchedVisit, 'events' | 'others'> {
  const byDevice = new Map<string, string[]>();
  for (const { device, body } of entries) {
    const bodies = byDevice.get(device);
    if (bodies === undefined) byDevice.set(device, [body]);
    else bodies.push(body);
  }
  const [technician = [], ...others] = [...byDevice.values()].map((bodies) => readBodies(bodies));
  const events = others.length === 0 ? technician : joinDevices(technician, others);
  return { events, others: entries.length - events.length };
}

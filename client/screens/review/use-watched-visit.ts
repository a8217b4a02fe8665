import { useEffect, useMemo, useState } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { joinBodies } from '../../../grammar/visit/join-devices.ts';
import type { Leases } from '../../../grammar/visit/leases.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import { inTurn } from '../../record/in-turn.ts';
import type { LinkState } from '../../record/link.ts';
import { type VisitWatch, watchVisit } from '../../record/watch-visit.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';
import { readingCompany } from '../session/who.ts';
import { ASK_AGAIN_MS, VisitTexts } from './open-visit-texts.ts';

export interface WatchedVisit {
  /** What counts of all devices, in its order: what the holders of the lease wrote, and remarks from elsewhere. */
  readonly events: readonly VisitEvent[];
  /** How many entries of devices that did not hold the lease do not count. */
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
  const [leases, setLeases] = useState<Leases>();
  const [come, setCome] = useState(0);
  const [level, setLevel] = useState(false);
  const [link, setLink] = useState<LinkState>({ link: 'connecting' });
  useEffect(() => {
    setEntries([]);
    setLevel(false);
    const texts = new VisitTexts(visit);
    const turn = inTurn();
    let watch: VisitWatch | undefined;
    let gone = false;
    let isLevel = false;
    let again: ReturnType<typeof setTimeout> | undefined;
    const all: WatchedEvent[] = [];
    let opened: readonly WatchedEvent[] = [];
    /** Opens what has come since, or all anew: a key may come behind the first events. */
    const show = (anew: boolean, waitMs: number) =>
      turn(async () => {
        const fresh = all.slice(anew ? 0 : opened.length);
        const { bodies, waits } = await texts.open(fresh);
        if (gone) return;
        const read = fresh.map((entry, at) => ({ ...entry, body: bodies[at] ?? entry.body }));
        opened = anew ? read : [...opened, ...read];
        if (read.some(isTakeOver)) await askLeases();
        if (gone) return;
        if (read.length > 0) setEntries(opened);
        if (isLevel) setLevel(true);
        clearTimeout(again);
        if (waits) again = setTimeout(() => void show(true, waitMs * 2), waitMs);
      });
    const askLeases = async () => {
      const answer = await askServer<Leases>('GET', `/api/visits/${encodeURIComponent(visit)}/lease`);
      if (answer.ok && !gone) setLeases(answer.body);
    };
    const take = (fresh: readonly WatchedEvent[]) => {
      all.push(...fresh);
      setCome(all.length);
    };
    void Promise.all([readingCompany(), readHeld(visit, (page) => !gone && take(page)), askLeases()]).then(
      ([company]) => {
        if (gone) return;
        performance.mark('readback.replay-read');
        void show(false, ASK_AGAIN_MS);
        watch = watchVisit({
          company,
          visit,
          held: all,
          ...browserLink(),
          events: (fresh, now) => {
            take(fresh);
            isLevel ||= now;
            // What comes while the watch draws level is shown in one piece.
            if (isLevel && (now || fresh.length > 0)) void show(false, ASK_AGAIN_MS);
          },
          changed: setLink,
        });
      },
    );
    const forget = onReachable(() => watch?.retryNow());
    return () => {
      gone = true;
      clearTimeout(again);
      forget();
      watch?.stop();
    };
  }, [visit]);
  const joined = useMemo(() => {
    const { events, leftOut } = joinBodies(entries, leases);
    return { events, others: leftOut.reduce((sum, { count }) => sum + count, 0) };
  }, [entries, leases]);
  return { ...joined, come, level, link };
}

/** Whose entries count from then on the server says. */
const isTakeOver = ({ body }: WatchedEvent) => body.includes('"took.over.visit"');

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

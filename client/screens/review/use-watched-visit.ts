import { useEffect, useMemo, useState } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { joinBodies } from '../../../grammar/visit/join-devices.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import { inTurn } from '../../record/in-turn.ts';
import type { LinkState } from '../../record/link.ts';
import { type VisitWatch, watchVisit } from '../../record/watch-visit.ts';
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
        setEntries(opened);
        if (isLevel) setLevel(true);
        clearTimeout(again);
        if (waits) again = setTimeout(() => void show(true, waitMs * 2), waitMs);
      });
    void readingCompany().then((company) => {
      if (gone) return;
      watch = watchVisit({
        company,
        visit,
        ...browserLink(),
        events: (fresh, now) => {
          all.push(...fresh);
          if (now && !isLevel) performance.mark('readback.replay-level');
          isLevel ||= now;
          setCome(all.length);
          if (isLevel && (now || fresh.length > 0)) void show(false, ASK_AGAIN_MS);
        },
        changed: setLink,
      });
    });
    const forget = onReachable(() => watch?.retryNow());
    return () => {
      gone = true;
      clearTimeout(again);
      forget();
      watch?.stop();
    };
  }, [visit]);
  const joined = useMemo(() => {
    const { events, leftOut } = joinBodies(entries);
    return { events, others: leftOut.reduce((sum, { count }) => sum + count, 0) };
  }, [entries]);
  return { ...joined, come, level, link };
}

import { useEffect, useMemo, useState } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { type JoinedVisit, joinDevices } from '../../../grammar/visit/join-devices.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import type { LinkState } from '../../record/link.ts';
import { type VisitWatch, watchVisit } from '../../record/watch-visit.ts';
import { readingCompany } from '../session/who.ts';

export interface WatchedVisit {
  /** What counts of all devices, in its order. */
  readonly entries: readonly WatchedEvent[];
  readonly events: readonly VisitEvent[];
  /** What devices wrote that did not hold the lease: it does not count. */
  readonly leftOut: JoinedVisit['leftOut'];
  /** Everything the server had is here; what comes from now on is live. */
  readonly level: boolean;
  readonly link: LinkState;
}

/** A visit as the server holds it, growing as it grows. */
export function useWatchedVisit(visit: string): WatchedVisit {
  const [entries, setEntries] = useState<readonly WatchedEvent[]>([]);
  const [level, setLevel] = useState(false);
  const [link, setLink] = useState<LinkState>({ link: 'connecting' });
  useEffect(() => {
    setEntries([]);
    setLevel(false);
    let watch: VisitWatch | undefined;
    let gone = false;
    void readingCompany().then((company) => {
      if (gone) return;
      watch = watchVisit({
        company,
        visit,
        ...browserLink(),
        events: (fresh, now) => {
          if (fresh.length > 0) setEntries((before) => [...before, ...fresh]);
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
  const counted = useMemo(() => {
    const events = readBodies(entries.map((entry) => entry.body));
    return joinDevices(entries.map((entry, at) => ({ ...entry, event: events[at] as VisitEvent })));
  }, [entries]);
  const events = useMemo(() => counted.entries.map(({ event }) => event), [counted]);
  return { entries: counted.entries, events, leftOut: counted.leftOut, level, link };
}

import { useEffect, useMemo, useState } from 'react';
import { LOCAL_COMPANY } from '../../../grammar/visit/envelope.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import type { LinkState } from '../../record/link.ts';
import { watchVisit } from '../../record/watch-visit.ts';

export interface WatchedVisit {
  /** In the order in which the server took them. */
  readonly entries: readonly WatchedEvent[];
  readonly events: readonly VisitEvent[];
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
    const watch = watchVisit({
      company: LOCAL_COMPANY,
      visit,
      ...browserLink(),
      events: (fresh, now) => {
        if (fresh.length > 0) setEntries((before) => [...before, ...fresh]);
        if (now) setLevel(true);
      },
      changed: setLink,
    });
    const forget = onReachable(() => watch.retryNow());
    return () => {
      forget();
      watch.stop();
    };
  }, [visit]);
  const events = useMemo(() => readBodies(entries.map((entry) => entry.body)), [entries]);
  return { entries, events, level, link };
}

import { useEffect, useMemo, useState } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import { inTurn } from '../../record/in-turn.ts';
import type { LinkState } from '../../record/link.ts';
import { type VisitWatch, watchVisit } from '../../record/watch-visit.ts';
import { readingCompany } from '../session/who.ts';
import { ASK_AGAIN_MS, VisitTexts } from './open-visit-texts.ts';

export interface WatchedVisit {
  /** In the order in which the server took them. */
  readonly entries: readonly WatchedEvent[];
  readonly events: readonly VisitEvent[];
  /** Everything the server had is here; what comes from now on is live. */
  readonly level: boolean;
  readonly link: LinkState;
}

interface Opened {
  /** As they came: their hashes are of these bodies. */
  readonly entries: readonly WatchedEvent[];
  /** The same with their personal texts readable. */
  readonly bodies: readonly string[];
}

const NOTHING: Opened = { entries: [], bodies: [] };

/** A visit as the server holds it, growing as it grows. */
export function useWatchedVisit(visit: string): WatchedVisit {
  const [opened, setOpened] = useState<Opened>(NOTHING);
  const [level, setLevel] = useState(false);
  const [link, setLink] = useState<LinkState>({ link: 'connecting' });
  useEffect(() => {
    setOpened(NOTHING);
    setLevel(false);
    const texts = new VisitTexts(visit);
    const turn = inTurn();
    const entries: WatchedEvent[] = [];
    let again: ReturnType<typeof setTimeout> | undefined;
    /** A key may come behind the first events: then all are opened anew. */
    const openAll = (waitMs: number) =>
      turn(async () => {
        const { bodies, waits } = await texts.open(entries);
        setOpened({ entries: [...entries], bodies });
        if (waits && !gone) again = setTimeout(() => void openAll(waitMs * 2), waitMs);
      });
    const openMore = (fresh: readonly WatchedEvent[], now: boolean) =>
      turn(async () => {
        const { bodies, waits } = await texts.open(fresh);
        entries.push(...fresh);
        if (fresh.length > 0) {
          setOpened((before) => ({ entries: [...before.entries, ...fresh], bodies: [...before.bodies, ...bodies] }));
        }
        if (now) setLevel(true);
        if (!waits || gone) return;
        clearTimeout(again);
        again = setTimeout(() => void openAll(ASK_AGAIN_MS * 2), ASK_AGAIN_MS);
      });
    let watch: VisitWatch | undefined;
    let gone = false;
    void readingCompany().then((company) => {
      if (gone) return;
      watch = watchVisit({
        company,
        visit,
        ...browserLink(),
        events: (fresh, now) => void openMore(fresh, now),
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
  const events = useMemo(() => readBodies(opened.bodies), [opened]);
  return { entries: opened.entries, events, level, link };
}

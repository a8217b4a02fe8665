import { useEffect, useState } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import { inTurn } from '../../record/in-turn.ts';
import type { LinkState } from '../../record/link.ts';
import { type VisitWatch, watchVisit } from '../../record/watch-visit.ts';
import { readingCompany } from '../session/who.ts';
import { ASK_AGAIN_MS, VisitTexts } from './open-visit-texts.ts';
import { readHeld } from './read-held.ts';
import { transcriptLines } from './transcript-lines.ts';
import { VisitMoments } from './visit-moments.ts';
import { VisitSoFar } from './visit-so-far.ts';

export interface WatchedVisit {
  /** What counts of all devices, in its order: what the holders of the lease wrote, and remarks from elsewhere. */
  readonly events: readonly VisitEvent[];
  /** What holds at each moment of it. */
  readonly moments: VisitMoments;
  /** How many entries of devices that did not hold the lease do not count. */
  readonly others: number;
  /** Everything the server had is here; what comes from now on is live. */
  readonly level: boolean;
  /** Entries that have come so far, also while they are not shown yet. */
  readonly come: number;
  /** When the latest of them came, by the server's clock in milliseconds since 1970; 0 before any. */
  readonly lastReceivedAt: number;
  readonly link: LinkState;
}

/** A visit as the server holds it, growing as it grows. What is there already is shown at once, when all of it is here. */
export function useWatchedVisit(visit: string): WatchedVisit {
  const [shown, setShown] = useState<Shown>(NOTHING);
  const [come, setCome] = useState(0);
  const [lastReceivedAt, setLastReceivedAt] = useState(0);
  const [level, setLevel] = useState(false);
  const [link, setLink] = useState<LinkState>({ link: 'connecting' });
  useEffect(() => {
    setShown(NOTHING);
    setLevel(false);
    setLastReceivedAt(0);
    const reading = readingCompany();
    const soFar = new VisitSoFar(visit, new VisitTexts(visit), reading);
    const turn = inTurn();
    let watch: VisitWatch | undefined;
    let gone = false;
    let isLevel = false;
    let again: ReturnType<typeof setTimeout> | undefined;
    const take = (fresh: readonly WatchedEvent[]) => {
      soFar.take(fresh);
      setCome(soFar.come.length);
      setLastReceivedAt((before) => fresh.reduce((last, { receivedAt }) => Math.max(last, receivedAt), before));
    };
    /** Shows what has come since, or all anew: a key may come behind the first events. */
    const show = (anew: boolean, waitMs: number) =>
      turn(async () => {
        const waits = await soFar.goOn(anew);
        if (gone) return;
        const { moments, others } = soFar;
        setShown((before) => (before.moments === moments ? before : { moments, others }));
        if (isLevel) setLevel(true);
        clearTimeout(again);
        if (waits) again = setTimeout(() => void show(true, waitMs * 2), waitMs);
      });
    const takePage = (page: readonly WatchedEvent[], goesOn: boolean) => {
      if (gone) return;
      take(page);
      if (!goesOn) return;
      // Gone through and worded while the next is on its way.
      void turn(async () => {
        await soFar.goOn(false);
        transcriptLines(soFar.moments.whole, soFar.moments.events);
      });
    };
    void Promise.all([reading, readHeld(visit, takePage)]).then(([company]) => {
      if (gone) return;
      performance.mark('readback.replay-read');
      void show(false, ASK_AGAIN_MS);
      watch = watchVisit({
        company,
        visit,
        held: soFar.come,
        ...browserLink(),
        events: (fresh, now) => {
          take(fresh);
          isLevel ||= now;
          // What comes while the watch draws level is shown in one piece.
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
  return { ...shown, events: shown.moments.events, come, lastReceivedAt, level, link };
}

type Shown = Pick<WatchedVisit, 'moments' | 'others'>;

const NOTHING: Shown = { moments: new VisitMoments([]), others: 0 };

import './technician.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { StreamId } from '../../../grammar/visit/envelope.ts';
import { claimWriter, type WriterClaim } from '../../record/browser/one-writer.ts';
import { askRoomForRecord } from '../../record/browser/room-for-record.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { KEPT, START } from '../../words/pages/start-words.ts';
import type { DeviceVisit } from '../session/device.ts';
import { readyForKeptVisits } from '../session/read-kept-visit.ts';
import { THIS_DEVICE } from '../session/this-device.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { AboutLine } from '../show/about-line.tsx';
import { LeftVisits } from './carried-on.tsx';
import { DeviceState } from './device-state.tsx';
import { KeepingLine } from './keeping-line.tsx';
import { KeptVisit, KeptVisits, useUnsent } from './kept-visits.tsx';
import { knownUnits } from './known-units.ts';
import { OpenVisit } from './open-visit.tsx';
import type { VisitOpening } from './opening-from.ts';
import { OtherTab } from './other-tab.tsx';
import type { RunningVisit } from './running-visit.tsx';
import { UnsentFiles } from './unsent-files.tsx';
import { VisitsElsewhere } from './visits-elsewhere.tsx';

/** What a visit runs on, apart from the list that the page begins with: fetched while nobody waits for it yet. */
const fetchVisit = () => Promise.all([import('./running-visit.tsx'), import('../session/visit-session.ts')]);

/** The programs of its workers, fetched as far ahead. */
const startAhead = async () => {
  readyForKeptVisits();
  (await import('../session/run-link.ts')).startVisitAhead();
};

type Place =
  | { readonly at: 'looking' }
  | { readonly at: 'visits'; readonly visits: readonly DeviceVisit[] }
  | { readonly at: 'reading'; readonly visit: DeviceVisit }
  | { readonly at: 'running'; readonly session: VisitSession; readonly Shown: typeof RunningVisit }
  | { readonly at: 'other-tab'; readonly stream: StreamId }
  | { readonly at: 'failed'; readonly sentence: string };

const device = THIS_DEVICE;

/** The technician's page: goes on with the visit that is open, else lists the visits here and opens a new one. */
export function TechnicianPage() {
  const [place, setPlace] = useState<Place>({ at: 'looking' });
  const claim = useRef<WriterClaim>(undefined);

  const enter = (stream: StreamId, session: () => Promise<VisitSession>) => {
    claim.current?.release();
    claim.current = claimWriter(stream.visit, {
      writing: () => {
        Promise.all([session(), fetchVisit()])
          .then(([running, [shown]]) => setPlace({ at: 'running', session: running, Shown: shown.RunningVisit }))
          .catch((error: unknown) => setPlace({ at: 'failed', sentence: sentenceOf(error) }));
      },
      waiting: () => setPlace({ at: 'other-tab', stream }),
    });
  };
  const open = (opening: VisitOpening) => {
    // Asked at the moment when it matters and is understood: before a record is written here.
    void askRoomForRecord();
    device
      .newStream()
      .then((stream) => enter(stream, () => device.begin(stream, opening)))
      .catch((error: unknown) => setPlace({ at: 'failed', sentence: sentenceOf(error) }));
  };
  const takeOver = (visit: string) => {
    void askRoomForRecord();
    device
      .streamFor(visit)
      .then((stream) => enter(stream, () => device.takeOver(stream)))
      .catch((error: unknown) => setPlace({ at: 'failed', sentence: sentenceOf(error) }));
  };
  const goOn = (stream: StreamId) => enter(stream, () => device.resume(stream));
  const list = async () => setPlace({ at: 'visits', visits: await device.visits() });
  const leave = async (session: VisitSession) => {
    await session.end();
    claim.current?.release();
    await list();
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page is loaded
  useEffect(() => {
    let gone = false;
    const look = async () => {
      const visits = await device.visits();
      const running = visits.find(isOpenHere);
      if (gone) return;
      if (running === undefined || location.search === '?visits') setPlace({ at: 'visits', visits });
      else goOn(running.stream);
    };
    fetchVisit()
      .then(startAhead)
      .catch(() => undefined);
    look().catch((error: unknown) => setPlace({ at: 'failed', sentence: sentenceOf(error) }));
    return () => {
      gone = true;
      claim.current?.release();
    };
  }, []);

  switch (place.at) {
    case 'looking':
      return <p className="quiet">{START.looking}</p>;
    case 'running':
      return (
        <place.Shown
          session={place.session}
          onLeave={() => void leave(place.session)}
          onTakeAgain={(visit) => void leave(place.session).then(() => takeOver(visit))}
        />
      );
    case 'other-tab':
      return <OtherTab device={device} stream={place.stream} />;
    case 'failed':
      return (
        <main className="start">
          <h1>{PAGE.program}</h1>
          <p className="notice" role="alert">
            {place.sentence}
          </p>
          <a href="/?visits">{KEPT.back}</a>
        </main>
      );
    case 'visits':
      return (
        <Start
          visits={place.visits}
          onOpen={open}
          onGoOn={goOn}
          onTake={takeOver}
          onRead={(visit) => setPlace({ at: 'reading', visit })}
        />
      );
    case 'reading':
      return <KeptVisit visit={place.visit} onBack={() => void list()} />;
  }
}

interface StartProps {
  readonly visits: readonly DeviceVisit[];
  readonly onOpen: (opening: VisitOpening) => void;
  readonly onGoOn: (stream: StreamId) => void;
  readonly onTake: (visit: string) => void;
  readonly onRead: (visit: DeviceVisit) => void;
}

function Start({ visits, onOpen, onGoOn, onTake, onRead }: StartProps) {
  const open = visits.filter(isOpenHere);
  const unsent = useUnsent(device);
  const known = useMemo(() => knownUnits(visits), [visits]);
  return (
    <main className="start">
      <h1>{PAGE.program}</h1>
      <p>
        {START.sayWhat} <a href="/review">{START.review}</a> · <a href="/practice">{START.practice}</a>
      </p>
      <DeviceState />
      <KeepingLine mayStart />
      {open.length === 0 ? null : (
        <section>
          <h2>{START.goOnWith}</h2>
          <ul className="open-visits">
            {open.map(({ stream, folded }) => (
              <li key={stream.visit}>
                <button type="button" className="key first" onClick={() => onGoOn(stream)}>
                  {START.openVisit(folded.site, folded.complaint)}
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <LeftVisits visits={visits.filter(({ closed, left }) => !closed && left !== undefined)} onTakeAgain={onTake} />
      <KeptVisits device={device} visits={visits.filter(({ closed }) => closed)} onRead={onRead} />
      <UnsentFiles device={device} visits={visits} unsent={unsent} />
      <section>
        <h2>{START.newVisit}</h2>
        <OpenVisit known={known} onOpen={onOpen} />
      </section>
      <VisitsElsewhere device={device} onTake={onTake} />
      <footer className="caution-note">
        {START.liveWork}
        <AboutLine />
      </footer>
    </main>
  );
}

/** Neither closed nor carried on by another device. */
function isOpenHere({ closed, folded, left }: DeviceVisit): boolean {
  return !closed && folded.first !== undefined && left === undefined;
}

function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

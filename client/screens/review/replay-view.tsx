import { useMemo } from 'react';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { PRINTED, REVIEW } from '../../words/pages/review-words.ts';
import { AcknowledgeLive } from './acknowledge-live.tsx';
import { Incomplete } from './incomplete.tsx';
import { MomentPanel } from './moment-panel.tsx';
import { PlayerBar } from './player-bar.tsx';
import { RecordCheck } from './record-check.tsx';
import { ReplayTimes } from './replay-times.ts';
import { Tables } from './tables.tsx';
import { TakeAway } from './take-away.tsx';
import { Tracks } from './tracks.tsx';
import { Transcript } from './transcript.tsx';
import { transcriptLines } from './transcript-lines.ts';
import { useReplay } from './use-replay.ts';
import { useWatchedVisit, type WatchedVisit } from './use-watched-visit.ts';

/** One visit: transcript, readings, energy and suspects on one clock. What is shown is the record folded up to then. */
export function ReplayView({ visit }: { readonly visit: string }) {
  const watched = useWatchedVisit(visit);
  if (watched.events.length === 0) {
    return (
      <main className="review-list">
        <h1>{REVIEW.visit(visit)}</h1>
        <p role="status">{waitingWords(watched)}</p>
        <Incomplete visit={visit} held={0} />
        <a href="/review">{REVIEW.allVisits}</a>
      </main>
    );
  }
  return <Replayed visit={visit} watched={watched} />;
}

function Replayed({ visit, watched }: { readonly visit: string; readonly watched: WatchedVisit }) {
  const { events, level, link } = watched;
  const whole = useMemo(() => foldVisit(events), [events]);
  const times = useMemo(() => ReplayTimes.of(events), [events]);
  const lines = useMemo(() => transcriptLines(whole), [whole]);
  const replay = useReplay(times, true);
  const count = replay.following ? events.length : times.countAt(replay.moment);
  const then = useMemo(() => foldVisit(events.slice(0, count)), [events, count]);
  return (
    <main className="review" data-count={count} data-events={events.length} data-level={level}>
      <header className="review-head">
        <h1>
          {whole.site} <span className="quiet">{whole.complaint}</span>
        </h1>
        <p>
          <a href="/review">{REVIEW.allVisits}</a>
          <span className="quiet"> {visit} · </span>
          <span data-link={link.link}>{linkWords(watched, replay.following, whole.summary !== undefined)}</span>
        </p>
        <Incomplete visit={visit} held={events.length} />
        <p>
          <a href={`/review?visit=${encodeURIComponent(visit)}&print`}>{PRINTED.open}</a>
          <TakeAway visit={visit} />
        </p>
        <AcknowledgeLive visit={visit} folded={whole} />
        <RecordCheck visit={visit} />
      </header>
      <div className="review-side">
        <MomentPanel folded={then} />
        <Tracks folded={whole} times={times} moment={replay.moment} seek={replay.seek} />
        <Tables folded={then} />
      </div>
      <Transcript visit={visit} lines={lines} times={times} count={count} seek={replay.seek} />
      <PlayerBar replay={replay} times={times} lines={lines} count={count} closed={whole.summary !== undefined} />
    </main>
  );
}

function waitingWords({ link, level }: WatchedVisit): string {
  if (link.link === 'stopped') return link.sentence;
  if (link.link === 'waiting') return REVIEW.triedAgain;
  return level ? REVIEW.noEntry : REVIEW.reading;
}

function linkWords({ link }: WatchedVisit, following: boolean, closed: boolean): string {
  if (closed) return REVIEW.closed;
  if (link.link === 'stopped') return link.sentence;
  if (link.link !== 'open') return REVIEW.noServer;
  return following ? REVIEW.following : REVIEW.connected;
}

import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { COMPARE, PRINTED, REPLAY, REVIEW } from '../../words/pages/review-words.ts';
import { beforeAndAfter } from '../../words/printed/print-readings.ts';
import { showMoment } from '../show/show-moment.ts';
import { AcknowledgeLive } from './acknowledge-live.tsx';
import { Answers } from './answers.tsx';
import { clockJumps } from './clock-jumps.ts';
import { CompareVisits } from './compare-visits.tsx';
import { type Goal, goalsOf, nextGoal } from './goals.ts';
import { Incomplete } from './incomplete.tsx';
import { KeysHelp } from './keys-help.tsx';
import { LandmarkChips } from './landmark-chips.tsx';
import { MomentPanel } from './moment-panel.tsx';
import { PlayerBar } from './player-bar.tsx';
import { RecordCheck } from './record-check.tsx';
import { ReplayTimes } from './replay-times.ts';
import { Folding, SheetRows, Tables } from './tables.tsx';
import { TakeAway } from './take-away.tsx';
import { Tracks } from './tracks.tsx';
import { Transcript } from './transcript.tsx';
import { transcriptLines } from './transcript-lines.ts';
import { useReplay } from './use-replay.ts';
import { useReviewKeys } from './use-review-keys.ts';
import { useWatchedVisit, type WatchedVisit } from './use-watched-visit.ts';
import { WallClock } from './wall-clock.ts';
import { WriteRemark } from './write-remark.tsx';

/** One visit: talk, readings, energy and suspects on one clock. What is shown is the record folded up to then. */
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
  const { events, moments, level, link, others } = watched;
  const { whole } = moments;
  const times = useMemo(() => ReplayTimes.of(events), [events]);
  const wall = useMemo(() => new WallClock(events, times, whole.zone), [events, times, whole.zone]);
  const lines = useMemo(() => transcriptLines(whole, events), [whole, events]);
  const goals = useMemo(() => goalsOf(lines, clockJumps(events)), [lines, events]);
  const replay = useReplay(times, true);
  const { seek, choose, count } = replay;
  const then = useMemo(() => moments.at(count), [moments, count]);
  const later = useAtMostEvery(FOLLOWS_MS, then);
  const [helps, setHelps] = useState(false);
  const countNow = useRef(count);
  countNow.current = count;
  const go = useCallback(
    (goal: Goal, way: 'on' | 'back') => {
      const seq = nextGoal(goals.get(goal) ?? [], countNow.current, way);
      if (seq !== undefined) choose(seq);
    },
    [goals, choose],
  );
  useReviewKeys({ replay, go, help: () => setHelps(true) });
  const [isOpen, isDrawn] = useDrawnInTurn();
  const isQuiet = useQuiet(watched.lastReceivedAt);
  return (
    <main
      className="review"
      data-count={count}
      data-events={events.length}
      data-level={level}
      data-open={isOpen || undefined}
      data-drawn={isDrawn || undefined}
    >
      <div className="review-read">
        <header className="review-head">
          <h1 dir="auto">
            {whole.site} <span className="quiet">{whole.complaint}</span>
          </h1>
          <p>
            <a href="/review">{REVIEW.allVisits}</a>
            <span className="quiet"> {visit} · </span>
            <span data-link={link.link}>
              {linkWords(watched, replay.following, whole.summary !== undefined, isQuiet)}
            </span>
          </p>
          <Incomplete visit={visit} held={events.length + others} />
          {others === 0 ? null : (
            <p className="told" data-others>
              {REPLAY.others(others)}
            </p>
          )}
          <div className="review-tools">
            <a className="control" href={`/review?visit=${encodeURIComponent(visit)}&print`}>
              {PRINTED.open}
            </a>
            <TakeAway visit={visit} />
            <RecordCheck visit={visit} />
            <button type="button" className="control" aria-label={REPLAY.keys} onClick={() => setHelps(true)}>
              {REPLAY.keysShort}
            </button>
          </div>
          <AcknowledgeLive visit={visit} folded={whole} />
        </header>
        <Answers folded={whole} />
        <div className="review-talk">
          <LandmarkChips goals={goals} go={go} />
          <Transcript visit={visit} lines={lines} times={times} count={later.facts.events} choose={choose} />
          <Folding title={REPLAY.remark}>
            <WriteRemark visit={visit} />
          </Folding>
        </div>
        <div className="review-side">
          <MomentPanel then={then} />
          {isOpen ? (
            <>
              <Tracks folded={whole} lines={lines} times={times} wall={wall} moment={replay.moment} seek={seek} />
              <section className="tables" aria-label={REPLAY.tables}>
                <Unhurried>
                  <BesideOthers visit={visit} events={events} />
                </Unhurried>
                <Tables then={later} times={times} />
              </section>
            </>
          ) : null}
        </div>
      </div>
      <PlayerBar
        replay={replay}
        times={times}
        wall={wall}
        lines={lines}
        count={count}
        closed={whole.summary !== undefined}
      />
      <KeysHelp open={helps} close={() => setHelps(false)} />
    </main>
  );
}

/** Long lists follow a moment that is dragged so often, and at once where it is put. */
const FOLLOWS_MS = 120;

/** The value, changing no oftener than that; the last one always comes. */
function useAtMostEvery<Value>(ms: number, value: Value): Value {
  const [shown, setShown] = useState(value);
  const changedAt = useRef(-Infinity);
  useEffect(() => {
    if (value === shown) return;
    const wait = Math.max(0, changedAt.current + ms - performance.now());
    const timer = setTimeout(() => {
      changedAt.current = performance.now();
      setShown(value);
    }, wait);
    return () => clearTimeout(timer);
  }, [value, shown, ms]);
  return shown;
}

/** The frames that show a visit as it was read first: answers, talk, moment and player; then charts and tables too. */
const FRAMES = ['readback.replay-open', 'readback.replay-drawn'] as const;

/** A page that nobody sees gets no frames: it goes on without. */
const NO_FRAME_MS = 1_000;

/** For each of these frames whether it is there; benches read when that was. */
function useDrawnInTurn(): readonly [boolean, boolean] {
  const [shown, setShown] = useState(0);
  useEffect(() => {
    const mark = FRAMES[shown];
    if (mark === undefined) return;
    const go = () => {
      performance.mark(mark);
      setShown(shown + 1);
    };
    let timer = setTimeout(go, NO_FRAME_MS);
    const frame = requestAnimationFrame(() => {
      clearTimeout(timer);
      timer = setTimeout(go);
    });
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [shown]);
  return [shown > 0, shown > 1];
}

/** What is made only once the page is there. */
function Unhurried({ children }: { readonly children: React.ReactNode }) {
  const [now, setNow] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setNow(true), 100);
    return () => clearTimeout(timer);
  }, []);
  return now ? children : null;
}

interface BesideOthersProps {
  readonly visit: string;
  readonly events: WatchedVisit['events'];
}

const BesideOthers = memo(function BesideOthers({ visit, events }: BesideOthersProps) {
  const record = useMemo(() => toVisitRecord(events), [events]);
  const table = useMemo(() => beforeAndAfter(record), [record]);
  return (
    <>
      <Folding title={REPLAY.beforeAfter} open>
        {table.rows.length === 0 ? <p>{REPLAY.noneBeforeAfter}</p> : <SheetRows table={table} />}
      </Folding>
      <Folding title={COMPARE.title}>
        <CompareVisits visit={visit} record={record} />
      </Folding>
    </>
  );
});

function waitingWords({ link, level, come }: WatchedVisit): string {
  if (link.link === 'stopped') return link.sentence;
  if (link.link === 'waiting') return REVIEW.triedAgain;
  if (level) return REVIEW.noEntry;
  return come === 0 ? REVIEW.reading : REPLAY.readingOn(come);
}

/** A visit of which nothing came for so long is not said to be followed without saying since when. */
const QUIET_AFTER_MS = 2 * 60_000;

/** @param lastReceivedAt when the latest entry came, by the server's clock in milliseconds since 1970 */
function useQuiet(lastReceivedAt: number): boolean {
  const [quietAt, setQuietAt] = useState<number>();
  useEffect(() => {
    const left = lastReceivedAt + QUIET_AFTER_MS - Date.now();
    const timer = setTimeout(() => setQuietAt(lastReceivedAt), Math.min(QUIET_AFTER_MS, Math.max(0, left)));
    return () => clearTimeout(timer);
  }, [lastReceivedAt]);
  return quietAt === lastReceivedAt;
}

function linkWords(
  { link, lastReceivedAt }: WatchedVisit,
  following: boolean,
  closed: boolean,
  isQuiet: boolean,
): string {
  if (closed) return REVIEW.closed;
  if (link.link === 'stopped') return link.sentence;
  if (link.link !== 'open') return REVIEW.noServer;
  const now = following ? REVIEW.following : REVIEW.connected;
  return isQuiet && lastReceivedAt > 0 ? REVIEW.quietSince(now, showMoment(lastReceivedAt)) : now;
}

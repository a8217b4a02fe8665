import { useVirtualizer } from '@tanstack/react-virtual';
import { memo, useEffect, useMemo, useRef, useState } from 'react';
import { TRANSCRIPT } from '../../words/shown/transcript-words.ts';
import { PlaySound } from '../show/play-sound.tsx';
import { ShowPhoto } from '../show/show-photo.tsx';
import { type ReplayTimes, showMoment } from './replay-times.ts';
import type { TranscriptLine } from './transcript-lines.ts';
import { upTo } from './visit-moments.ts';

interface TranscriptProps {
  readonly visit: string;
  readonly lines: readonly TranscriptLine[];
  readonly times: ReplayTimes;
  /** How many events have happened at the moment that is shown, or the one of them that was chosen. */
  readonly count: number;
  readonly choose: (seq: number) => void;
  /** Where a page holds two, each has its own. */
  readonly name?: string;
}

export const VIEWS = ['talk', 'all', 'entries'] as const;
type View = (typeof VIEWS)[number];

/** So many lines stand in the page whole; of more only those around what is in view. */
const WHOLE = 600;
const AROUND = 8;
/** Of a line that was not measured yet, in CSS pixels. */
const HIGH = 62;

/** The talk and what came of it; the line of the moment is marked, and choosing a line goes there. */
export function Transcript({ visit, lines, times, count, choose, name = TRANSCRIPT.title }: TranscriptProps) {
  const [view, setView] = useState<View>('all');
  const shown = useMemo(() => lines.filter((line) => isIn(view, line)), [lines, view]);
  const current = upTo(shown, count).length - 1;
  const list = useRef<HTMLOListElement>(null);
  const isWhole = shown.length <= WHOLE;
  const rows = useVirtualizer({
    count: isWhole ? 0 : shown.length,
    getScrollElement: () => list.current,
    // What is measured while it is drawn is drawn with the next frame, not in between.
    useFlushSync: false,
    estimateSize: () => HIGH,
    overscan: AROUND,
    // It begins where it will be: what lies before is never laid out.
    initialOffset: () => Math.max(0, current) * HIGH,
  });
  // Rows are known by their place: of another choice of them none was measured.
  // biome-ignore lint/correctness/useExhaustiveDependencies: measured anew where the choice changes
  useEffect(() => rows.measure(), [rows, view]);
  useEffect(() => {
    if (current < 0) return;
    if (!isWhole) return rows.scrollToIndex(current, { align: 'center' });
    const line = list.current?.children[current];
    if (list.current === null || !(line instanceof HTMLElement)) return;
    list.current.scrollTop = line.offsetTop - list.current.clientHeight / 2;
  }, [current, rows, isWhole]);
  return (
    <section className="transcript" aria-label={name}>
      <div className="transcript-head">
        <h2>{TRANSCRIPT.title}</h2>
        <label>
          <span className="reader-only">{TRANSCRIPT.view}</span>
          <select className="control" value={view} onChange={(event) => setView(event.target.value as View)}>
            {VIEWS.map((one) => (
              <option key={one} value={one}>
                {TRANSCRIPT.views[one]}
              </option>
            ))}
          </select>
        </label>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <ol ref={list} tabIndex={0} aria-label={TRANSCRIPT.title}>
        {isWhole ? (
          shown.map((line, index) => (
            <li key={`${line.seq} ${line.kind} ${line.text}`} data-kind={line.kind} data-seq={line.seq}>
              <Line
                visit={visit}
                line={line}
                moment={times.momentOf(line.seq)}
                isCurrent={index === current}
                choose={choose}
              />
            </li>
          ))
        ) : (
          <li className="transcript-room" aria-hidden="true" style={{ height: rows.getTotalSize() }} />
        )}
        {rows.getVirtualItems().map(({ index, key, start }) => {
          const line = shown[index];
          return line === undefined ? null : (
            <li
              key={key}
              ref={rows.measureElement}
              data-index={index}
              data-kind={line.kind}
              data-seq={line.seq}
              className="transcript-row"
              style={{ transform: `translateY(${start}px)` }}
            >
              <Line
                visit={visit}
                line={line}
                moment={times.momentOf(line.seq)}
                isCurrent={index === current}
                choose={choose}
              />
            </li>
          );
        })}
      </ol>
      {view === 'entries' ? null : <LeftOut lines={lines} />}
    </section>
  );
}

interface LineProps {
  readonly visit: string;
  readonly line: TranscriptLine;
  readonly moment: number;
  readonly isCurrent: boolean;
  readonly choose: (seq: number) => void;
}

const Line = memo(function Line({ visit, line, moment, isCurrent, choose }: LineProps) {
  const detail = line.leftOut ?? line.detail ?? '';
  return (
    <>
      <button
        type="button"
        className={`line line-${line.kind}`}
        aria-current={isCurrent ? 'step' : undefined}
        onClick={() => choose(line.seq)}
      >
        <span className="line-time">{showMoment(moment)}</span>
        <span className="line-kind">{TRANSCRIPT.kinds[line.kind]}</span>
        <span className="line-text" dir="auto">
          {line.text}
        </span>
        {detail === '' ? null : (
          <span className="line-detail" dir="auto">
            {detail}
          </span>
        )}
      </button>
      {line.sound === undefined ? null : <PlaySound sound={line.sound} of={line.text} visit={visit} />}
      {line.photo === undefined ? null : <ShowPhoto sha256={line.photo} of={line.text} visit={visit} />}
    </>
  );
});

/** What of the record is in no line of the talk, by kind and with the reason: nothing is left out unsaid. */
const LeftOut = memo(function LeftOut({ lines }: { readonly lines: readonly TranscriptLine[] }) {
  const counts = new Map<string, { times: number; why: string }>();
  for (const { text, leftOut } of lines) {
    if (leftOut === undefined) continue;
    counts.set(text, { times: (counts.get(text)?.times ?? 0) + 1, why: leftOut });
  }
  const times = [...counts.values()].reduce((sum, one) => sum + one.times, 0);
  if (times === 0) return null;
  return (
    <details className="left-out">
      <summary>{TRANSCRIPT.leftOut(times)}</summary>
      <ul>
        {[...counts].map(([type, one]) => (
          <li key={type}>{TRANSCRIPT.leftOutKind(one.times, type, one.why)}</li>
        ))}
      </ul>
    </details>
  );
});

function isIn(view: View, { kind, leftOut }: TranscriptLine): boolean {
  if (view === 'entries') return true;
  if (leftOut !== undefined) return false;
  return view === 'all' || kind === 'heard' || kind === 'said' || kind === 'remark' || kind === 'note';
}

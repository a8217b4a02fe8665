import { useEffect, useRef } from 'react';
import { TRANSCRIPT } from '../../words/shown/transcript-words.ts';
import { PlaySound } from '../show/play-sound.tsx';
import { ShowPhoto } from '../show/show-photo.tsx';
import { type ReplayTimes, showMoment } from './replay-times.ts';
import type { TranscriptLine } from './transcript-lines.ts';

interface TranscriptProps {
  readonly visit: string;
  readonly lines: readonly TranscriptLine[];
  readonly times: ReplayTimes;
  /** How many events have happened at the moment that is shown. */
  readonly count: number;
  readonly seek: (moment: number) => void;
}

/** The whole talk and what came of it; the line of the moment is marked, and choosing a line goes there. */
export function Transcript({ visit, lines, times, count, seek }: TranscriptProps) {
  const current = lines.findLastIndex((line) => line.seq <= count);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const item = list.current?.children[current];
    if (item instanceof HTMLElement && list.current !== null) {
      list.current.scrollTop = item.offsetTop - list.current.offsetTop - list.current.clientHeight / 2;
    }
  }, [current]);
  return (
    <section className="transcript" aria-label={TRANSCRIPT.title}>
      <h2>{TRANSCRIPT.title}</h2>
      <ol ref={list}>
        {lines.map((line, index) => (
          <li key={`${line.seq}-${line.kind}-${line.text}`} data-kind={line.kind} data-seq={line.seq}>
            <button
              type="button"
              className={`line line-${line.kind}`}
              aria-current={index === current ? 'step' : undefined}
              onClick={() => seek(times.momentOf(line.seq))}
            >
              <span className="line-time">{showMoment(times.momentOf(line.seq))}</span>
              <span className="line-kind">{TRANSCRIPT.kinds[line.kind]}</span>
              <span className="line-text">{line.text}</span>
              {line.detail === undefined || line.detail === '' ? null : (
                <span className="line-detail">{line.detail}</span>
              )}
            </button>
            {line.sound === undefined ? null : <PlaySound sound={line.sound} of={line.text} visit={visit} />}
            {line.photo === undefined ? null : <ShowPhoto sha256={line.photo} of={line.text} visit={visit} />}
          </li>
        ))}
      </ol>
    </section>
  );
}

import { type MouseEvent, type RefObject, useEffect, useRef, useState } from 'react';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { EnergyTrack } from './energy-track.tsx';
import { ReadingTrack } from './reading-track.tsx';
import { type ReplayTimes, showMoment } from './replay-times.ts';
import { SuspectTrack } from './suspect-track.tsx';
import { momentAt, TRACK_LEFT, trackScale } from './track-scale.ts';

interface TracksProps {
  readonly folded: FoldedVisit;
  readonly times: ReplayTimes;
  readonly moment: number;
  readonly seek: (moment: number) => void;
}

/** Readings, energy and suspects over one time line; a click goes to its moment, the line marks the one shown. */
export function Tracks({ folded, times, moment, seek }: TracksProps) {
  const { end } = times;
  const place = useRef<HTMLDivElement>(null);
  const scale = trackScale(useWidth(place), times);
  const timeOf = (seq: number) => times.momentOf(seq);
  const go = (event: MouseEvent<HTMLElement>) => {
    seek(momentAt(event.clientX - event.currentTarget.getBoundingClientRect().left - PADDING, scale, times));
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the slider of the player does the same by keys
    // biome-ignore lint/a11y/noStaticElementInteractions: as above; the tables hold what is drawn
    <div className="tracks" ref={place} onClick={go}>
      <ReadingTrack readings={folded.readings} scale={scale} timeOf={timeOf} moment={moment} />
      <EnergyTrack changes={folded.energyChanges} scale={scale} timeOf={timeOf} end={end} moment={moment} />
      <SuspectTrack rankings={folded.suspects} scale={scale} timeOf={timeOf} end={end} moment={moment} />
      <svg className="track-axis" width={scale.width} height={20} aria-hidden="true">
        {times.longStretches(TOLD_FROM).map(({ begins, lasts }) => (
          <text key={begins} x={(scale.across(begins) + scale.across(begins + lasts)) / 2} y={14} textAnchor="middle">
            {TRACKS.quiet(showMoment(lasts))}
          </text>
        ))}
        <text x={TRACK_LEFT} y={14}>
          {showMoment(0)}
        </text>
        <text x={scale.right} y={14} textAnchor="end">
          {showMoment(end)}
        </text>
      </svg>
    </div>
  );
}

/** A quiet stretch of so many seconds is told of under the tracks. */
const TOLD_FROM = 60;
/** The padding of `.tracks` in review.css. */
const PADDING = 8;

/** The inner width of an element, in CSS pixels; it is drawn again when that changes. */
function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(360);
  useEffect(() => {
    if (element.current === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(Math.max(280, entry.contentRect.width));
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return width;
}

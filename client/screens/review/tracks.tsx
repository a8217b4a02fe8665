import { memo, type PointerEvent, type RefObject, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { EnergyTrack } from './energy-track.tsx';
import { HappeningTrack } from './happening-track.tsx';
import { ReadingTrack } from './reading-track.tsx';
import type { ReplayTimes } from './replay-times.ts';
import { SuspectTrack } from './suspect-track.tsx';
import { TimeAxis } from './time-axis.tsx';
import { momentAt, type TrackScale, trackScale } from './track-scale.ts';
import type { TranscriptLine } from './transcript-lines.ts';
import type { WallClock } from './wall-clock.ts';

interface TracksProps {
  readonly folded: FoldedVisit;
  readonly lines: readonly TranscriptLine[];
  readonly times: ReplayTimes;
  readonly wall: WallClock;
  readonly moment: number;
  readonly seek: (moment: number) => void;
}

/** What happened, readings, energy and suspects over one time line; the line of the moment is dragged, or put by a click. */
export function Tracks({ folded, lines, times, wall, moment, seek }: TracksProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const scale = useMemo(() => trackScale(width, times), [width, times]);
  const go = (event: PointerEvent<HTMLElement>) => {
    seek(momentAt(event.clientX - event.currentTarget.getBoundingClientRect().left - PADDING, scale, times));
  };
  return (
    <div
      className="tracks"
      ref={place}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) go(event);
      }}
    >
      {width === 0 ? null : <DrawnTracks folded={folded} lines={lines} times={times} wall={wall} scale={scale} />}
      <div
        className="tracks-moment"
        data-moment={moment}
        style={{ transform: `translateX(${scale.across(moment) + PADDING}px)` }}
      />
    </div>
  );
}

type DrawnProps = Pick<TracksProps, 'folded' | 'lines' | 'times' | 'wall'> & { readonly scale: TrackScale };

/** Drawn once for each visit and width: the moment that is shown changes nothing in it. */
const DrawnTracks = memo(function DrawnTracks({ folded, lines, times, wall, scale }: DrawnProps) {
  const timeOf = (seq: number) => times.momentOf(seq);
  const { end } = times;
  return (
    <>
      <HappeningTrack phases={folded.phases} lines={lines} scale={scale} timeOf={timeOf} end={end} />
      <ReadingTrack readings={folded.readings} scale={scale} timeOf={timeOf} />
      <EnergyTrack changes={folded.energyChanges} scale={scale} timeOf={timeOf} end={end} />
      <SuspectTrack rankings={folded.suspects} scale={scale} timeOf={timeOf} end={end} />
      <TimeAxis times={times} scale={scale} wall={wall} />
    </>
  );
});

/** The padding of `.tracks` in review.css. */
const PADDING = 8;

/** The inner width of an element, in CSS pixels, 0 before it is there; it is drawn again when that changes. */
function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    if (element.current === null) return;
    const wide = (inner: number) => setWidth(Math.max(260, inner));
    const { offsetWidth, clientWidth } = element.current;
    wide(element.current.getBoundingClientRect().width - (offsetWidth - clientWidth) - 2 * PADDING);
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) wide(entry.contentRect.width);
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return width;
}

import { type MouseEvent, type RefObject, useEffect, useRef, useState } from 'react';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { EnergyTrack } from './energy-track.tsx';
import { ReadingTrack } from './reading-track.tsx';
import { showMoment } from './replay-times.ts';
import { SuspectTrack } from './suspect-track.tsx';
import { momentAt, trackScale } from './track-scale.ts';

interface TracksProps {
  readonly folded: FoldedVisit;
  readonly times: readonly number[];
  readonly moment: number;
  readonly seek: (moment: number) => void;
}

/** Readings, energy and suspects over one time line; a click goes to its moment, the line marks the one shown. */
export function Tracks({ folded, times, moment, seek }: TracksProps) {
  const end = Math.max(times.at(-1) ?? 0, 1);
  const place = useRef<HTMLDivElement>(null);
  const scale = trackScale(useWidth(place), end);
  const timeOf = (seq: number) => times[seq - 1] ?? 0;
  const go = (event: MouseEvent<HTMLElement>) => {
    seek(momentAt(event.clientX - event.currentTarget.getBoundingClientRect().left - PADDING, scale, end));
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the slider of the player does the same by keys
    // biome-ignore lint/a11y/noStaticElementInteractions: as above; the tables hold what is drawn
    <div className="tracks" ref={place} onClick={go}>
      <ReadingTrack readings={folded.readings} scale={scale} timeOf={timeOf} moment={moment} />
      <EnergyTrack changes={folded.energyChanges} scale={scale} timeOf={timeOf} end={end} moment={moment} />
      <SuspectTrack rankings={folded.suspects} scale={scale} timeOf={timeOf} end={end} moment={moment} />
      <p className="track-ends quiet" aria-hidden="true">
        <span>{showMoment(0)}</span>
        <span>{showMoment(end)}</span>
      </p>
    </div>
  );
}

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

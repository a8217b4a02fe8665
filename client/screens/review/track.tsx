import type { ReactNode } from 'react';
import { TRACKS } from '../../words/pages/review-words.ts';
import { TRACK_LEFT, type TrackScale } from './track-scale.ts';

interface TrackProps {
  readonly title: string;
  readonly height: number;
  readonly moment: number;
  readonly scale: TrackScale;
  readonly legend?: ReactNode;
  readonly children: ReactNode;
}

/** One picture over the time line, with the line of the moment. */
export function Track({ title, height, moment, scale, legend, children }: TrackProps) {
  const x = scale.across(moment);
  return (
    <figure className="track">
      <figcaption>
        {title} {legend}
      </figcaption>
      <svg width={scale.width} height={height} role="img" aria-label={TRACKS.picture(title)}>
        <line className="track-base" x1={TRACK_LEFT} x2={scale.right} y1={height - 0.5} y2={height - 0.5} />
        {children}
        <line className="track-moment" x1={x} x2={x} y1={0} y2={height} data-moment={moment} />
      </svg>
    </figure>
  );
}

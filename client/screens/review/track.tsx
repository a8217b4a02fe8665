import type { ReactNode } from 'react';
import { TRACKS } from '../../words/pages/review-words.ts';
import { TRACK_LEFT, type TrackScale } from './track-scale.ts';

interface TrackProps {
  readonly title: string;
  readonly height: number;
  readonly scale: TrackScale;
  readonly legend?: ReactNode;
  readonly children: ReactNode;
}

/** One picture over the time line. The line of the moment lies over all of them. */
export function Track({ title, height, scale, legend, children }: TrackProps) {
  return (
    <figure className="track">
      <figcaption>
        {title} {legend}
      </figcaption>
      <svg width={scale.width} height={height} role="img" aria-label={TRACKS.picture(title)}>
        <line className="track-base" x1={TRACK_LEFT} x2={scale.right} y1={height - 0.5} y2={height - 0.5} />
        {children}
      </svg>
    </figure>
  );
}

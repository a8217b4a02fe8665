import type { ReplayTimes } from './replay-times.ts';

/** Left of the time line, for names, and right of it. In CSS pixels, as everything in a track. */
export const TRACK_LEFT = 96;
const TRACK_RIGHT = 8;

/** From a moment in seconds to a place on the drawing. */
export type Across = (moment: number) => number;

/** How a track lies over the time line: its width, and where each moment is. */
export interface TrackScale {
  readonly width: number;
  readonly right: number;
  readonly across: Across;
}

/** The whole replay spans a drawing `width` wide; quiet stretches are drawn as short as they are played. */
export function trackScale(width: number, times: ReplayTimes): TrackScale {
  const right = width - TRACK_RIGHT;
  const end = Math.max(times.playedEnd, 1);
  return { width, right, across: (moment) => TRACK_LEFT + (times.toPlayed(moment) / end) * (right - TRACK_LEFT) };
}

/** The moment at a place on the drawing. */
export function momentAt(place: number, { right }: TrackScale, times: ReplayTimes): number {
  const share = (place - TRACK_LEFT) / (right - TRACK_LEFT);
  return times.toMoment(Math.max(0, Math.min(1, share)) * Math.max(times.playedEnd, 1));
}

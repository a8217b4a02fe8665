import { scaleLinear } from 'd3-scale';
import type { ReplayTimes } from './replay-times.ts';

/** Left of the time line, for names and numbers, and right of it. In CSS pixels, as everything in a track. */
export const TRACK_LEFT = 104;
const TRACK_RIGHT = 8;
/** How high a number of an axis is. */
export const TRACK_TOP = 10;

/** From a moment in seconds to a place on the drawing. */
export type Across = (moment: number) => number;

/** How a track lies over the time line: its width, and where each moment is. */
export interface TrackScale {
  readonly width: number;
  readonly right: number;
  readonly across: Across;
}

const playedScale = (right: number, times: ReplayTimes) =>
  scaleLinear()
    .domain([0, Math.max(times.playedEnd, 1)])
    .range([TRACK_LEFT, right])
    .clamp(true);

/** The whole replay spans a drawing `width` wide; quiet stretches are drawn as short as they are played. */
export function trackScale(width: number, times: ReplayTimes): TrackScale {
  const right = width - TRACK_RIGHT;
  const scale = playedScale(right, times);
  return { width, right, across: (moment) => scale(times.toPlayed(moment)) };
}

/** The moment at a place on the drawing. */
export function momentAt(place: number, { right }: TrackScale, times: ReplayTimes): number {
  return times.toMoment(playedScale(right, times).invert(place));
}

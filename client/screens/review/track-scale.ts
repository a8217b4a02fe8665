import { scaleLinear } from 'd3-scale';
import type { ReplayTimes } from './replay-times.ts';

/** Left of the time line, for names and numbers, and right of it. In CSS pixels, as everything in a track. */
export const TRACK_LEFT = 104;
const TRACK_RIGHT = 8;
/** How high a number of an axis is. */
export const TRACK_TOP = 10;

/** So many places are known at once: those of a long visit's events, which each track asks for anew. */
const MOST_PLACES = 50_000;

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
  const places = new Map<number, number>();
  const across = (moment: number): number => {
    const known = places.get(moment);
    if (known !== undefined) return known;
    const place = scale(times.toPlayed(moment));
    // A replay that is played for hours comes by ever more moments.
    if (places.size >= MOST_PLACES) places.clear();
    places.set(moment, place);
    return place;
  };
  return { width, right, across };
}

/** The moment at a place on the drawing. */
export function momentAt(place: number, { right }: TrackScale, times: ReplayTimes): number {
  return times.toMoment(playedScale(right, times).invert(place));
}

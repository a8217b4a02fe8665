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

/** `end` seconds span a drawing `width` wide. */
export function trackScale(width: number, end: number): TrackScale {
  const right = width - TRACK_RIGHT;
  return { width, right, across: (moment) => TRACK_LEFT + (moment / end) * (right - TRACK_LEFT) };
}

/** The moment at a place on the drawing. */
export function momentAt(place: number, { right }: TrackScale, end: number): number {
  return Math.max(0, Math.min(end, ((place - TRACK_LEFT) / (right - TRACK_LEFT)) * end));
}

import { scaleLinear } from 'd3-scale';
import { TRACKS } from '../../words/pages/review-words.ts';
import { type Label, placeLabels } from './place-labels.ts';
import { type ReplayTimes, showMoment } from './replay-times.ts';
import { TRACK_LEFT, type TrackScale } from './track-scale.ts';
import type { WallClock } from './wall-clock.ts';

interface TimeAxisProps {
  readonly times: ReplayTimes;
  readonly scale: TrackScale;
  readonly wall: WallClock;
}

/** A quiet stretch of so many seconds is told of under the tracks. */
const TOLD_FROM = 60;
const PIXELS_A_TICK = 120;
/** Base lines of its rows: elapsed, wall clock, quiet stretches. */
const ROWS = [14, 30, 46] as const;

/** What passed since the visit began, and below it what the device’s clock showed; quiet stretches that are drawn short. */
export function TimeAxis({ times, scale, wall }: TimeAxisProps) {
  const played = scaleLinear().domain([0, Math.max(times.playedEnd, 1)]);
  const moments = played.ticks(Math.max(2, (scale.right - TRACK_LEFT) / PIXELS_A_TICK)).map((at) => times.toMoment(at));
  const row = (y: number, text: (moment: number) => string): Label[] =>
    [0, ...moments].map((moment) => ({
      text: text(moment),
      at: besideEdges(scale.across(moment), text(moment), scale, y),
    }));
  const quiet = times.longStretches(TOLD_FROM).map(({ begins, lasts }): Label => {
    const text = TRACKS.quiet(showMoment(lasts));
    const middle = (scale.across(begins) + scale.across(begins + lasts)) / 2;
    return { text, at: besideEdges(middle, text, scale, ROWS[2]) };
  });
  const labels = [...row(ROWS[0], showMoment), ...row(ROWS[1], (moment) => wall.at(moment)), ...quiet];
  const placed = placeLabels(labels, { left: 0, right: scale.width });
  return (
    <svg className="track-axis" width={scale.width} height={ROWS[2] + 6} aria-hidden="true">
      {TRACKS.axis.map((name, index) => (
        <text key={name} className="track-name" x={2} y={ROWS[index]}>
          {name}
        </text>
      ))}
      {placed.map((label) =>
        label === undefined ? null : (
          <text key={`${label.y} ${label.x}`} x={label.x} y={label.y} textAnchor="middle">
            {label.text}
          </text>
        ),
      )}
    </svg>
  );
}

/** At its place, and at the edges as near to it as it fits. */
function besideEdges(x: number, text: string, { right }: TrackScale, y: number): Label['at'] {
  const half = text.length * 4;
  return [{ x: Math.min(right - half, Math.max(TRACK_LEFT + half, x)), y }];
}

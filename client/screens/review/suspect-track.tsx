import { scaleLinear } from 'd3-scale';
import { area, curveStepAfter, stack } from 'd3-shape';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { showShare } from '../../words/shown/show-likely.ts';
import { faultWords } from '../../words/things/fault-words.ts';
import { lastOfEach } from './last-of-each.ts';
import { Track } from './track.tsx';
import { TRACK_LEFT, type TrackScale } from './track-scale.ts';

interface SuspectTrackProps {
  readonly rankings: FoldedVisit['suspects'];
  readonly scale: TrackScale;
  readonly timeOf: (seq: number) => number;
  readonly end: number;
}

const HEIGHT = 112;
const PAD = 8;
const SHOWN = 5;
/** Shares at which a line is drawn. */
const TICKS = [0, 0.5, 1];

interface Standing {
  readonly moment: number;
  readonly shares: ReadonlyMap<FaultId, number>;
}

/** The probabilities of the suspects stacked to one, over time; those that never stood out are the rest on top. */
export function SuspectTrack({ rankings, scale, timeOf, end }: SuspectTrackProps) {
  const shown = leading(rankings);
  if (shown.length === 0) return null;
  const down = scaleLinear()
    .domain([0, 1])
    .range([HEIGHT - PAD, PAD]);
  const standing: Standing[] = rankings.map(({ seq, suspects }) => ({
    moment: timeOf(seq),
    shares: new Map(suspects.map(({ fault, probability }) => [fault, probability])),
  }));
  const last = standing.at(-1);
  if (last !== undefined) standing.push({ ...last, moment: end });
  // Of a long visit many stand in one pixel: the last of them is what is seen.
  const drawn = lastOfEach(standing, ({ moment }) => Math.round(scale.across(moment)));
  const series = stack<Standing, FaultId>()
    .keys(shown)
    .value(({ shares }, fault) => shares.get(fault) ?? 0)(drawn);
  const shape = area<(typeof series)[number][number]>()
    .curve(curveStepAfter)
    .x(({ data }) => scale.across(data.moment))
    .y0(([low]) => down(low))
    .y1(([, high]) => down(high));
  const legend = (
    <span className="legend">
      {shown.map((fault, index) => (
        <span key={fault}>
          <span className={`legend-mark legend-${index}`} aria-hidden="true" /> {faultWords(fault)}
        </span>
      ))}
    </span>
  );
  return (
    <Track title={TRACKS.suspects} legend={legend} height={HEIGHT} scale={scale}>
      {TICKS.map((tick) => (
        <g key={tick} className="track-tick">
          <line x1={TRACK_LEFT} x2={scale.right} y1={down(tick)} y2={down(tick)} />
          <text x={TRACK_LEFT - 6} y={down(tick) + 5} textAnchor="end">
            {showShare(tick)}
          </text>
        </g>
      ))}
      {series.map((one, index) => (
        <path key={one.key} className={`share share-${index}`} d={shape(one) ?? ''}>
          <title>{faultWords(one.key)}</title>
        </path>
      ))}
    </Track>
  );
}

/** The faults that at any time stood highest. */
function leading(rankings: FoldedVisit['suspects']): readonly FaultId[] {
  const peak = new Map<FaultId, number>();
  for (const { suspects } of rankings) {
    for (const { fault, probability } of suspects) peak.set(fault, Math.max(peak.get(fault) ?? 0, probability));
  }
  return [...peak.entries()]
    .sort((a, b) => b[1] - a[1])
    .slice(0, SHOWN)
    .map(([fault]) => fault);
}

import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { type EnergyState, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { ENERGY_WORDS, ZONE_SHORT } from '../../words/shown/energy-names.ts';
import { boxes } from './boxes.ts';
import { lastOfEach } from './last-of-each.ts';
import { labelWidth } from './place-labels.ts';
import { Track } from './track.tsx';
import type { TrackScale } from './track-scale.ts';

interface EnergyTrackProps {
  readonly changes: FoldedVisit['energyChanges'];
  readonly scale: TrackScale;
  readonly timeOf: (seq: number) => number;
  readonly end: number;
}

const ROW = 22;
const PAD = 4;

/** One row a zone, its states one after another: colour and word; the shape is told by the band of the moment. */
export function EnergyTrack({ changes, scale, timeOf, end }: EnergyTrackProps) {
  return (
    <Track title={TRACKS.energy} height={ZONES.length * ROW} scale={scale}>
      {ZONES.map((zone, index) => (
        <g key={zone}>
          <text className="track-name" x={2} y={index * ROW + 16}>
            {ZONE_SHORT[zone]}
          </text>
          <ZoneRow
            top={index * ROW}
            scale={scale}
            stretches={lastOfEach(stretches(zone, changes, timeOf, end), ({ from }) => Math.round(scale.across(from)))}
          />
        </g>
      ))}
    </Track>
  );
}

interface ZoneRowProps {
  readonly top: number;
  readonly scale: TrackScale;
  readonly stretches: readonly Stretch[];
}

/** The stretches of one zone, those of a state in one shape: a long visit has hundreds. */
function ZoneRow({ top, scale, stretches }: ZoneRowProps) {
  const placed = stretches.map(({ state, from, to }) => {
    const x = scale.across(from);
    return { state, x, width: Math.max(1.5, scale.across(to) - x) };
  });
  return [...new Set(placed.map(({ state }) => state))].map((state) => {
    const mine = placed.filter((one) => one.state === state);
    return (
      <g key={state} className={`stretch stretch-${state}`}>
        <path d={boxes(mine, top + 1, ROW - 2)} />
        {mine
          .filter(({ width }) => width >= labelWidth(ENERGY_WORDS[state]) + 2 * PAD)
          .map(({ x }) => (
            <text key={x} x={x + PAD} y={top + 16}>
              {ENERGY_WORDS[state]}
            </text>
          ))}
      </g>
    );
  });
}

interface Stretch {
  readonly state: EnergyState;
  readonly from: number;
  readonly to: number;
}

function stretches(
  zone: ZoneId,
  changes: FoldedVisit['energyChanges'],
  timeOf: (seq: number) => number,
  end: number,
): readonly Stretch[] {
  const mine = changes.filter((change) => change.zone === zone);
  const starts = [
    { state: 'unknown' as EnergyState, from: 0 },
    ...mine.map(({ to, seq }) => ({ state: to, from: timeOf(seq) })),
  ];
  return starts
    .map(({ state, from }, index) => ({ state, from, to: starts[index + 1]?.from ?? end }))
    .filter(({ from, to }, index) => to > from || index === starts.length - 1);
}

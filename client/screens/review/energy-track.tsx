import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { type EnergyState, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { ENERGY_WORDS, ZONE_SHORT } from '../../words/shown/energy-names.ts';
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
          {lastOfEach(stretches(zone, changes, timeOf, end), ({ from }) => Math.round(scale.across(from))).map(
            ({ state, from, to }) => {
              const x = scale.across(from);
              const width = Math.max(1.5, scale.across(to) - x);
              return (
                <g key={`${state}-${from}`} className={`stretch stretch-${state}`}>
                  <rect x={x} y={index * ROW + 1} width={width} height={ROW - 2} />
                  {width < labelWidth(ENERGY_WORDS[state]) + 2 * PAD ? null : (
                    <text x={x + PAD} y={index * ROW + 16}>
                      {ENERGY_WORDS[state]}
                    </text>
                  )}
                </g>
              );
            },
          )}
        </g>
      ))}
    </Track>
  );
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

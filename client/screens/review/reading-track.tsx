import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { showUnit } from '../../words/shown/show-reading.ts';
import { READING_TABLE } from '../../words/shown/table-words.ts';
import { Track } from './track.tsx';
import { TRACK_LEFT, type TrackScale } from './track-scale.ts';

interface ReadingTrackProps {
  readonly readings: readonly ReadingLine[];
  readonly scale: TrackScale;
  readonly timeOf: (seq: number) => number;
  readonly moment: number;
}

const LANE = 64;
const PAD = 12;

/** One lane a unit: each reading as a mark at its height, its band as a bracket beside it. */
export function ReadingTrack({ readings, scale, timeOf, moment }: ReadingTrackProps) {
  const units = [...new Set(readings.map((line) => line.reading.unit))];
  return (
    <Track title={TRACKS.readings} height={Math.max(1, units.length) * LANE} moment={moment} scale={scale}>
      {units.map((unit, index) => (
        <Lane
          key={unit}
          top={index * LANE}
          name={showUnit(unit)}
          readings={readings.filter((line) => line.reading.unit === unit)}
          scale={scale}
          timeOf={timeOf}
        />
      ))}
    </Track>
  );
}

interface LaneProps extends Omit<ReadingTrackProps, 'moment'> {
  readonly top: number;
  readonly name: string;
}

function Lane({ top, name, readings, scale, timeOf }: LaneProps) {
  const ends = readings.flatMap(({ reading, judged }) => [
    typeof reading.value === 'number' ? reading.value : 0,
    judged?.band.low ?? 0,
    judged?.band.high ?? 0,
  ]);
  const low = Math.min(0, ...ends);
  const high = Math.max(1e-9, ...ends);
  const down = (value: number) => top + LANE - PAD - ((value - low) / (high - low)) * (LANE - 2 * PAD);
  const sides = labelSides(
    readings.map((line) => ({
      x: scale.across(timeOf(line.seq)),
      low: line.reading.value !== 'open' && down(line.reading.value) > top + LANE / 2,
    })),
  );
  return (
    <g>
      <text className="track-name" x={4} y={top + LANE / 2 + 5}>
        {name}
      </text>
      <line className="track-lane" x1={TRACK_LEFT} x2={scale.right} y1={top + LANE - 1} y2={top + LANE - 1} />
      {readings.map((line, index) => {
        const x = scale.across(timeOf(line.seq));
        const { value } = line.reading;
        const y = value === 'open' ? top + PAD : down(value);
        const bad = line.judged?.word === 'does not fit' || line.judged?.word === 'impossible';
        return (
          <g key={line.number} className={line.withdrawn ? 'mark withdrawn' : bad ? 'mark bad' : 'mark'}>
            <title>{READING_TABLE.mark(line.reading, line.judged?.word)}</title>
            {line.judged === undefined ? null : (
              <Band band={line.judged.band} x={x} down={down} low={low} high={high} />
            )}
            {bad ? (
              <path d={`M${x - 5} ${y - 5} L${x + 5} ${y + 5} M${x - 5} ${y + 5} L${x + 5} ${y - 5}`} />
            ) : (
              <circle cx={x} cy={y} r={4.5} />
            )}
            <text x={x} y={sides[index] === 'above' ? y - 8 : y + 18} textAnchor="middle">
              {value}
            </text>
          </g>
        );
      })}
    </g>
  );
}

interface BandProps {
  readonly band: { readonly low?: number; readonly high?: number };
  readonly x: number;
  readonly down: (value: number) => number;
  readonly low: number;
  readonly high: number;
}

function Band({ band, x, down, low, high }: BandProps) {
  const top = down(band.high ?? high);
  const bottom = down(band.low ?? low);
  return (
    <path className="band" d={`M${x - 10} ${top} H${x + 10} M${x} ${top} V${bottom} M${x - 10} ${bottom} H${x + 10}`} />
  );
}

/** Labels nearer than this would lie over one another. */
const LABEL_WIDTH = 40;

/** A low mark has its number above it and a high one below, unless the one before it is near and on that side. */
function labelSides(marks: readonly { readonly x: number; readonly low: boolean }[]): readonly ('above' | 'below')[] {
  const sides: ('above' | 'below')[] = [];
  marks.forEach(({ x, low }, index) => {
    const near = index > 0 && x - (marks[index - 1]?.x ?? 0) < LABEL_WIDTH;
    const own = low ? 'above' : 'below';
    sides.push(near && sides[index - 1] === own ? (own === 'above' ? 'below' : 'above') : own);
  });
  return sides;
}

import { scaleLinear } from 'd3-scale';
import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { showUnit } from '../../words/shown/show-reading.ts';
import { READING_TABLE } from '../../words/shown/table-words.ts';
import { lastOfEach } from './last-of-each.ts';
import { placeLabels } from './place-labels.ts';
import { Track } from './track.tsx';
import { TRACK_LEFT, TRACK_TOP, type TrackScale } from './track-scale.ts';

interface ReadingTrackProps {
  readonly readings: readonly ReadingLine[];
  readonly scale: TrackScale;
  readonly timeOf: (seq: number) => number;
}

const LANE = 76;
const PAD = 22;

/** One lane a unit: each reading as a mark at its height, its band as a bracket beside it. */
export function ReadingTrack({ readings, scale, timeOf }: ReadingTrackProps) {
  const units = [...new Set(readings.map((line) => line.reading.unit))];
  return (
    <Track
      title={units.length === 0 ? TRACKS.noReadings : TRACKS.readings}
      height={units.length * LANE + 1}
      scale={scale}
    >
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

interface LaneProps extends ReadingTrackProps {
  readonly top: number;
  readonly name: string;
}

function Lane({ top, name, readings, scale, timeOf }: LaneProps) {
  const down = laneScale(readings, top);
  const ticks = down.domain();
  const shownTick = down.tickFormat(2);
  const all = readings.map((line) => {
    const { value } = line.reading;
    return {
      line,
      x: scale.across(timeOf(line.seq)),
      y: typeof value === 'number' ? down(value) : top + PAD,
      bad: line.judged?.word === 'does not fit' || line.judged?.word === 'impossible',
    };
  });
  const marks = lastOfEach(all, placeOf);
  const labels = placeLabels(
    marks.map(({ line, x, y }) => ({
      text: String(line.reading.value),
      at:
        y > top + LANE / 2
          ? [
              { x, y: y - 10 },
              { x, y: y + 19 },
            ]
          : [
              { x, y: y + 19 },
              { x, y: y - 10 },
            ],
    })),
    { left: TRACK_LEFT, right: scale.width, marks },
  );
  return (
    <g>
      <text className="track-name" x={2} y={top + LANE / 2 + 5}>
        {name}
      </text>
      {ticks.map((tick) => (
        <g key={tick} className="track-tick">
          <line x1={TRACK_LEFT} x2={scale.right} y1={down(tick)} y2={down(tick)} />
          <text x={TRACK_LEFT - 6} y={down(tick) + TRACK_TOP / 2} textAnchor="end">
            {shownTick(tick)}
          </text>
        </g>
      ))}
      <line className="track-lane" x1={TRACK_LEFT} x2={scale.right} y1={top + LANE - 1} y2={top + LANE - 1} />
      {[false, true].map((withdrawn) => (
        <path
          key={String(withdrawn)}
          className={withdrawn ? 'band withdrawn' : 'band'}
          d={marks
            .filter(({ line }) => line.withdrawn === withdrawn)
            .map(({ line, x }) => (line.judged === undefined ? '' : bracket(line.judged.band, x, down)))
            .join('')}
        />
      ))}
      {marks.map(({ line, x, y, bad }, index) => {
        const label = labels[index];
        return (
          <g key={line.number} className={line.withdrawn ? 'mark withdrawn' : bad ? 'mark bad' : 'mark'}>
            <title>{READING_TABLE.mark(line.reading, line.judged?.word)}</title>
            {bad ? (
              <path d={`M${x - 5} ${y - 5} L${x + 5} ${y + 5} M${x - 5} ${y + 5} L${x + 5} ${y - 5}`} />
            ) : (
              <circle cx={x} cy={y} r={4.5} />
            )}
            {label === undefined ? null : (
              <text x={label.x} y={label.y} textAnchor="middle">
                {label.text}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** What is drawn at one pixel in one way; no drawing is as wide or high as 2^16. */
function placeOf({ line, x, y, bad }: { line: ReadingLine; x: number; y: number; bad: boolean }): number {
  const way = (bad ? 2 : 0) + (line.withdrawn ? 1 : 0);
  return (Math.round(x) * 2 ** 16 + Math.round(y)) * 4 + way;
}

/** From a value to its height in the lane: over all values and the ends of their bands, to round numbers. */
function laneScale(readings: readonly ReadingLine[], top: number) {
  const ends = readings
    .flatMap(({ reading, judged }) => [reading.value, judged?.band.low, judged?.band.high])
    .filter((value) => typeof value === 'number' && Number.isFinite(value)) as number[];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const domain =
    ends.length === 0 ? [0, 1] : low === high ? [Math.min(0, low), high === 0 ? 1 : Math.max(0, high)] : [low, high];
  return scaleLinear()
    .domain(domain)
    .nice(2)
    .range([top + LANE - PAD, top + PAD]);
}

/** The band of a reading: a bracket at its place, from its low to its high. */
function bracket(
  band: { readonly low?: number; readonly high?: number },
  x: number,
  down: ReturnType<typeof laneScale>,
) {
  const [low = 0, high = 0] = down.domain();
  const top = down(band.high ?? high);
  const bottom = down(band.low ?? low);
  return `M${x - 10} ${top}H${x + 10}M${x} ${top}V${bottom}M${x - 10} ${bottom}H${x + 10}`;
}

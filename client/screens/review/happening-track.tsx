import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { LANDMARK_WORDS, TRACKS } from '../../words/pages/review-words.ts';
import { boxes } from './boxes.ts';
import { lastOfEach } from './last-of-each.ts';
import { labelWidth } from './place-labels.ts';
import { Track } from './track.tsx';
import type { TrackScale } from './track-scale.ts';
import { LANDMARKS, type TranscriptLine } from './transcript-lines.ts';

interface HappeningTrackProps {
  readonly phases: FoldedVisit['phases'];
  readonly lines: readonly TranscriptLine[];
  readonly scale: TrackScale;
  readonly timeOf: (seq: number) => number;
  readonly end: number;
}

const ROW = 22;
const PAD = 4;

/** Phases, and below them a row for each kind of landmark that the visit has, and one for what was kept as sound. */
export function HappeningTrack({ phases, lines, scale, timeOf, end }: HappeningTrackProps) {
  const rows = [
    ...LANDMARKS.map((landmark) => ({
      name: LANDMARK_WORDS[landmark].row,
      danger: landmark === 'unproven' || landmark === 'hurt',
      marks: lines.filter((line) => line.landmark === landmark),
    })),
    { name: TRACKS.sound, danger: false, marks: lines.filter(({ sound }) => sound !== undefined) },
  ].filter(({ marks }) => marks.length > 0);
  const shownPhases = lastOfEach(phases, ({ seq }) => Math.round(scale.across(timeOf(seq)))).map(
    ({ seq, phase }, index, all) => {
      const x = scale.across(timeOf(seq));
      const next = all[index + 1];
      return { phase, x, width: Math.max(1.5, scale.across(next === undefined ? end : timeOf(next.seq)) - x) };
    },
  );
  return (
    <Track title={TRACKS.happenings} height={(rows.length + 1) * ROW} scale={scale}>
      <text className="track-name" x={2} y={16}>
        {TRACKS.phase}
      </text>
      <g className="phase-stretch">
        <path d={boxes(shownPhases, 1, ROW - 2)} />
        {shownPhases
          .filter(({ phase, width }) => width >= labelWidth(phase) + 2 * PAD)
          .map(({ phase, x }) => (
            <text key={x} x={x + PAD} y={16}>
              {phase}
            </text>
          ))}
      </g>
      {rows.map(({ name, danger, marks }, index) => {
        const y = (index + 1) * ROW;
        return (
          <g key={name} className={danger ? 'happening happening-danger' : 'happening'}>
            <text className="track-name" x={2} y={y + 16}>
              {name}
            </text>
            {lastOfEach(marks, ({ seq }) => Math.round(scale.across(timeOf(seq)))).map((line) => (
              <path key={`${line.seq}-${line.text}`} d={`M${scale.across(timeOf(line.seq))} ${y + 4} v14`}>
                <title>{line.text}</title>
              </path>
            ))}
          </g>
        );
      })}
    </Track>
  );
}

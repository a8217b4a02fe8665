import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { showLikely } from '../../words/shown/show-likely.ts';
import { faultWords } from '../../words/things/fault-words.ts';
import { Track } from './track.tsx';
import type { TrackScale } from './track-scale.ts';

interface SuspectTrackProps {
  readonly rankings: FoldedVisit['suspects'];
  readonly scale: TrackScale;
  readonly timeOf: (seq: number) => number;
  readonly end: number;
  readonly moment: number;
}

const HEIGHT = 110;
const SHOWN = 5;

/** The probabilities of the suspects stacked to one, over time; those that never stood out are the rest on top. */
export function SuspectTrack({ rankings, scale, timeOf, end, moment }: SuspectTrackProps) {
  const shown = leading(rankings);
  const steps = rankings.map(({ seq, suspects }, index) => ({
    from: timeOf(seq),
    to: rankings[index + 1] === undefined ? end : timeOf(rankings[index + 1]?.seq ?? seq),
    shares: shown.map((fault) => suspects.find((one) => one.fault === fault)?.probability ?? 0),
  }));
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
    <Track title={TRACKS.suspects} legend={legend} height={HEIGHT} moment={moment} scale={scale}>
      {steps.map(({ from, to, shares }) => {
        const x = scale.across(from);
        const width = Math.max(0.5, scale.across(to) - x);
        let below = HEIGHT;
        return shares.map((share, index) => {
          const height = share * HEIGHT;
          below -= height;
          const fault = shown[index] as FaultId;
          return (
            <rect
              key={`${fault}-${from}`}
              className={`share share-${index}`}
              x={x}
              y={below}
              width={width}
              height={height}
            >
              <title>{showLikely({ fault, probability: share })}</title>
            </rect>
          );
        });
      })}
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

import '../review/review.css';
import { useMemo } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { ReplayTimes } from '../review/replay-times.ts';
import { Transcript } from '../review/transcript.tsx';
import { transcriptLines } from '../review/transcript-lines.ts';
import { useReplay } from '../review/use-replay.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { SuspectList } from '../show/suspect-list.tsx';

interface RunReplayProps {
  readonly who: 'you' | 'planner';
  readonly events: readonly VisitEvent[];
}

/** A run of an exercise as a visit is replayed: its talk, and energy and suspects at the line that is chosen. */
export function RunReplay({ who, events }: RunReplayProps) {
  const whole = useMemo(() => foldVisit(events), [events]);
  const times = useMemo(() => ReplayTimes.of(events), [events]);
  const lines = useMemo(() => transcriptLines(whole, events), [whole, events]);
  const replay = useReplay(times, true);
  const count = replay.following ? events.length : times.countAt(replay.moment);
  const then = useMemo(() => foldVisit(events.slice(0, count)), [events, count]);
  return (
    <section className="run-replay" aria-label={PRACTICE.replayOf(who)} data-run={who} data-count={count}>
      <h3>{PRACTICE.replayOf(who)}</h3>
      <EnergyBand energy={then.energy} />
      <SuspectList suspects={then.suspects.at(-1)?.suspects ?? []} most={4} />
      <Transcript visit={whole.visit} lines={lines} times={times} count={count} seek={replay.seek} />
    </section>
  );
}

import '../review/review.css';
import { useEffect, useMemo } from 'react';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { PLAYER } from '../../words/pages/review-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { TRANSCRIPT } from '../../words/shown/transcript-words.ts';
import { PlayerBar } from '../review/player-bar.tsx';
import { ReplayTimes } from '../review/replay-times.ts';
import { Tracks } from '../review/tracks.tsx';
import { Transcript } from '../review/transcript.tsx';
import { transcriptLines } from '../review/transcript-lines.ts';
import { useReplay } from '../review/use-replay.ts';
import { VisitMoments } from '../review/visit-moments.ts';
import { WallClock } from '../review/wall-clock.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { SuspectList } from '../show/suspect-list.tsx';

/** A place in a run that is asked for; a new one each time, so that the same can be asked for again. */
export interface ShownPlace {
  /** How many events of the record there were. */
  readonly events: number;
}

interface RunReplayProps {
  readonly who: 'you' | 'planner';
  readonly events: readonly VisitEvent[];
  readonly place?: ShownPlace | undefined;
}

/** A run of an exercise as a visit is replayed: talk, readings, energy and suspects on one clock. */
export function RunReplay({ who, events, place }: RunReplayProps) {
  const moments = useMemo(() => new VisitMoments(events), [events]);
  const { whole } = moments;
  const times = useMemo(() => ReplayTimes.of(events), [events]);
  const wall = useMemo(() => new WallClock(events, times, whole.zone), [events, times, whole.zone]);
  const lines = useMemo(() => transcriptLines(whole, events), [whole, events]);
  const replay = useReplay(times, true);
  const { seek, choose, chosen, count, moment } = replay;
  useEffect(() => {
    if (place !== undefined) choose(place.events);
  }, [place, choose]);
  const then = useMemo(() => moments.at(count), [moments, count]);
  return (
    <section className="run-replay" aria-label={PRACTICE.replayOf(who)} data-run={who} data-count={count}>
      <h3>{PRACTICE.replayOf(who)}</h3>
      <PlayerBar
        replay={replay}
        times={times}
        wall={wall}
        lines={lines}
        count={count}
        closed
        name={PRACTICE.panelOf(PLAYER.panel, who)}
      />
      <EnergyBand energy={then.facts.energy} />
      <SuspectList suspects={then.suspects?.suspects ?? []} most={4} />
      <Tracks folded={whole} lines={lines} times={times} wall={wall} moment={moment} seek={seek} />
      <Transcript
        visit={whole.visit}
        lines={lines}
        times={times}
        count={chosen ?? count}
        choose={choose}
        name={PRACTICE.panelOf(TRANSCRIPT.title, who)}
      />
    </section>
  );
}

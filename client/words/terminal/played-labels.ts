import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { showFinding, showLikely } from '../shown/show-likely.ts';

type Event<T extends VisitEvent['type']> = Extract<VisitEvent, { type: T }>;

/** What stands before each line of a played visit. */
export const PLAYED_LABELS = {
  later: 'later',
  heard: 'heard',
  understood: 'understood',
  diagnosis: 'diagnosis',
  says: 'says',
  step: 'step',
  asks: 'asks',
  caution: 'CAUTION',
  warning: 'WARNING',
  notDone: 'not done',
  notice: '*',
  energy: 'energy',
  suspects: 'suspects',
  refused: 'refused',
  unproven: 'unproven',
  corrected: 'corrected',
  finding: 'FINDING',
  measured: 'meter',
  seen: 'eyes',
  exercise: 'exercise',
  hint: 'hint',
  wouldShow: 'expected',
  left: 'left',
} as const;

export const PLAYED_LINES = {
  line: (number: number, of: number) => `— ${number} of ${of} —`,
  later: (minutes: number) => `${minutes} minutes pass`,
  heard: (text: string, confidence: number, verdictMs: number) =>
    `"${text}" (${Math.round(confidence * 100)} %, ${Math.round(verdictMs)} ms)`,
  notBelieved: 'not believed',
  understood: (words: string, verdict: string) => `${words} [${verdict}]`,
  building: 'getting to know this unit, about a second',
  energy: ({ zone, to, why }: Event<'energy.changed'>) => `${ZONE_NAMES[zone]}: ${to.replace('-', ' ')} (${why})`,
  suspects: ({ suspects }: Event<'suspects.ranked'>) => suspects.slice(0, 3).map(showLikely).join(', '),
  refused: ({ reading, reason }: Event<'reading.refused'>) =>
    `${reading.value} ${reading.unit}: ${reason.replaceAll('-', ' ')}`,
  unproven: ({ what, zone, state }: Event<'work.unproven'>) =>
    `${what} (${ZONE_NAMES[zone]}: ${state.replace('-', ' ')})`,
  corrected: ({ from, to }: Event<'reading.corrected'>) => `${from.value} → ${to.value} ${to.unit}`,
  finding: (event: Event<'finding.stated'>) => showFinding(event),
} as const;

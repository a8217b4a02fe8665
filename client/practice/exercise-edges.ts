import type { Mouth } from '../speaking/mouth.ts';
import type { Clock, VisitEdges } from '../visit/run/visit-run.ts';
import type { AskedDiagnosis } from './ask-diagnosis.ts';
import type { ExerciseLine } from './exercise-voice.ts';

/** What an exercise needs of whatever it runs in. */
export interface ExerciseEdges {
  readonly diagnosis: AskedDiagnosis;
  readonly understand: VisitEdges['understand'];
  readonly mouth: Mouth;
  readonly clock: Clock;
  /** The record of the visit; never the record of a real one. */
  readonly append: VisitEdges['append'];
  readonly tell: (line: ExerciseLine) => void;
  /** Has minutes pass at once, and calls back what is due on the way. */
  readonly letPass: (minutes: number, settled: () => Promise<void>) => Promise<void>;
  readonly software: string;
}

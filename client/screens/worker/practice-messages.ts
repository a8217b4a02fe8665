import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { FaultTable } from '../../diagnosis/table/fault-table.ts';
import type { RunLookedBack } from '../../practice/debrief.ts';
import type { DrawnCase, ExercisePlan } from '../../practice/exercise-plan.ts';

/** What the page of the practice asks of its worker. */
export type PracticeQuestion = { readonly draw: ExercisePlan } | { readonly plan: 'run'; readonly software: string };

/** The planner's own run of the exercise that was drawn, as plain data. */
export interface PlannerRun {
  readonly back: RunLookedBack;
  readonly events: readonly VisitEvent[];
}

export type PracticeNews =
  | { readonly building: number }
  | { readonly drawn: DrawnCase; readonly table: FaultTable }
  | { readonly run: PlannerRun }
  | { readonly sentence: string };

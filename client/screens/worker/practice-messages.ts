import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { AskedDiagnosis } from '../../practice/ask-diagnosis.ts';
import type { RunLookedBack } from '../../practice/debrief.ts';
import type { DrawnCase, ExercisePlan } from '../../practice/exercise-plan.ts';

/** What the page of the practice asks of its worker. */
export type PracticeQuestion =
  | { readonly draw: ExercisePlan }
  | { readonly plan: 'run'; readonly software: string }
  | DiagnosisCall;

/** A question to the diagnosis of the unit that was drawn; its answer has the same number. */
export type DiagnosisCall = {
  readonly [Name in keyof AskedDiagnosis]: {
    readonly number: number;
    readonly call: Name;
    readonly given: Parameters<AskedDiagnosis[Name]>;
  };
}[keyof AskedDiagnosis];

/** The planner's own run of the exercise that was drawn, as plain data. */
export interface PlannerRun {
  readonly back: RunLookedBack;
  readonly events: readonly VisitEvent[];
}

export type PracticeNews =
  | { readonly building: number }
  | { readonly drawn: DrawnCase }
  | { readonly number: number; readonly answer: unknown }
  | { readonly run: PlannerRun }
  | { readonly sentence: string };

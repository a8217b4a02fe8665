import type { Counts } from './debrief.ts';
import { FAMILIES, type PracticeFamily } from './exercise-plan.ts';

/** An exercise that is over, as far as progress is told by it. */
export interface ExerciseDone {
  readonly family: PracticeFamily;
  readonly mended: boolean;
  readonly counts: Counts;
  /** Minutes of the planner's own run of the same unit. */
  readonly plannerMinutes: number;
}

/** So many exercises of a family count as the latest (ours). */
const LATEST = 3;

/** A count for each exercise, before and lately; undefined where there were none. */
interface Then<T> {
  readonly before: T | undefined;
  readonly lately: T | undefined;
}

export interface FamilyProgress {
  readonly family: PracticeFamily;
  readonly exercises: number;
  readonly mended: number;
  /** Of each exercise on average, each count by itself. */
  readonly harmful: Then<number>;
  readonly skippedProofs: Then<number>;
  readonly hints: Then<number>;
  /** Minutes of work for each minute of the planner's. */
  readonly pace: Then<number>;
}

/** How somebody gets on, by what was hidden. @param done the oldest first */
export function progressOf(done: readonly ExerciseDone[]): readonly FamilyProgress[] {
  return FAMILIES.flatMap((family) => {
    const own = done.filter((one) => one.family === family);
    if (own.length === 0) return [];
    const at = Math.max(0, own.length - LATEST);
    const then = (of: (one: ExerciseDone) => number): Then<number> => ({
      before: mean(own.slice(0, at).map(of)),
      lately: mean(own.slice(at).map(of)),
    });
    return [
      {
        family,
        exercises: own.length,
        mended: own.filter(({ mended }) => mended).length,
        harmful: then(({ counts }) => counts.harmful),
        skippedProofs: then(({ counts }) => counts.skippedProofs),
        hints: then(({ counts }) => counts.hints),
        pace: then(({ counts, plannerMinutes }) => counts.minutes / Math.max(1, plannerMinutes)),
      },
    ];
  });
}

function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

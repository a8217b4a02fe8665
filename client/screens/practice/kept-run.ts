import type { ExerciseInput } from '../../practice/exercise-input.ts';
import { type ExercisePlan, linkOf } from '../../practice/exercise-plan.ts';

/** Something that was done in an exercise: when, what, and how it stands in the talk. */
export interface KeptDeed {
  /** Milliseconds since the exercise began. */
  readonly mono: number;
  readonly words: string;
  readonly input: ExerciseInput;
}

/** An exercise under way, as its tab keeps it: what was done, from which all else follows again. */
export interface KeptRun {
  readonly plan: ExercisePlan;
  /** Unix time, milliseconds. */
  readonly began: number;
  readonly deeds: readonly KeptDeed[];
  /** Its debrief was kept: it counts no second time. */
  readonly isDone: boolean;
}

const NAME = 'readback.exercise';

/** Keeps an exercise for a reload of this tab, and of no other. What does not fit is not kept: nothing else is lost by it. */
export function keepRun(run: KeptRun): void {
  try {
    sessionStorage.setItem(NAME, JSON.stringify(run));
  } catch (error) {
    console.warn('This exercise would not outlast a reload:', error);
  }
}

export function forgetRun(): void {
  sessionStorage.removeItem(NAME);
}

/** The exercise that this tab was in, where its address still asks for it. */
export function runOfTab(address: string): KeptRun | undefined {
  try {
    const kept = JSON.parse(sessionStorage.getItem(NAME) ?? 'null') as KeptRun | null;
    return kept !== null && Array.isArray(kept.deeds) && linkOf(kept.plan) === address ? kept : undefined;
  } catch {
    return undefined;
  }
}

import { type DBSchema, openDB } from 'idb';
import type { RunLookedBack } from '../../practice/debrief.ts';
import { type ExercisePlan, nameOf } from '../../practice/exercise-plan.ts';
import type { ExerciseDone } from '../../practice/progress.ts';

/** An exercise as this device keeps it: by itself, in a database in which no visit is. */
export interface KeptExercise {
  /** RFC 3339, when it ended. */
  readonly at: string;
  /** Unix time, milliseconds, when it began: by it an exercise that a tab was copied with counts once. */
  readonly began?: number;
  readonly plan: ExercisePlan;
  readonly trainee: Omit<RunLookedBack, 'log'>;
  readonly plannerMinutes: number;
}

interface Schema extends DBSchema {
  exercises: { key: number; value: KeptExercise };
}

const open = () =>
  openDB<Schema>('readback-exercises', 1, {
    upgrade: (database) => void database.createObjectStore('exercises', { autoIncrement: true }),
  });

/** Keeps an exercise that is over. Resolves though it could not be kept: nothing depends on it. */
export async function keepExercise(kept: KeptExercise): Promise<void> {
  try {
    const database = await open();
    await database.add('exercises', kept);
    database.close();
  } catch (error) {
    console.warn('The exercise was not kept on this device:', error);
  }
}

/** What was practised on this device, the oldest first. */
export async function exercisesDone(): Promise<readonly ExerciseDone[]> {
  try {
    const database = await open();
    const all = await database.getAll('exercises');
    database.close();
    return eachOnce(all).map(({ plan, trainee, plannerMinutes }) => ({
      family: plan.family,
      mended: trainee.mended,
      counts: trainee.counts,
      plannerMinutes,
    }));
  } catch {
    return [];
  }
}

/** A tab that was copied in mid-exercise ends the same one twice: the first end counts. */
function eachOnce(all: readonly KeptExercise[]): readonly KeptExercise[] {
  const isSame = (a: KeptExercise, b: KeptExercise) =>
    a.began !== undefined && a.began === b.began && nameOf(a.plan) === nameOf(b.plan);
  return all.filter((one, at) => !all.slice(0, at).some((other) => isSame(one, other)));
}

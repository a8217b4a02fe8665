import { samePlaces } from '../../grammar/visit/judge-reading.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { LookId } from '../diagnosis/measuring/look-tests.ts';
import { EXERCISE } from '../words/practice/exercise-words.ts';
import type { Taking } from './simulated-unit.ts';

/** What is about to be measured or looked at: it waits for a suspect to be named, or for a caution. */
export interface Attempt {
  readonly test: TestId | undefined;
  /** Of the trainee's own choice, and counted: not one that the plan of the visit asks for. */
  readonly chosen: boolean;
  /** Whether the visit leads to it as to a test of its search. */
  readonly leads: boolean;
  readonly taking: Taking | LookId;
  /** Where the words put it, which goes into the record. */
  readonly said: readonly PointId[];
}

/** What is measured or looked at, as it is called. */
export function attemptWords({ test, taking, said }: Attempt): string {
  if (typeof taking === 'string') return EXERCISE.looking(taking);
  return test === undefined ? EXERCISE.measuring(said, taking.quantity) : EXERCISE.looking(test);
}

/** Whether somebody goes to the same place or the same look again. */
export function isSame(a: Attempt, b: Attempt): boolean {
  if (typeof a.taking === 'string' || typeof b.taking === 'string') return a.taking === b.taking;
  return a.taking.quantity === b.taking.quantity && samePlaces(a.said, b.said);
}

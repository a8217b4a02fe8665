import type { Meaning, ReadAt } from '../../grammar/phrases/meaning.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { EarUtterance } from '../visit/run/visit-run.ts';
import type { Exercise } from './exercise.ts';
import type { Order } from './read-order.ts';

/** All that a trainee does in an exercise, as plain data: the same, given again, comes to the same. */
export type ExerciseInput =
  | { readonly hear: EarUtterance }
  | { readonly say: string }
  | { readonly order: Order }
  /** By touch; the words stand in the record as what was heard. */
  | { readonly enter: Meaning; readonly words: string }
  | { readonly measure: ReadAt }
  /** A probe on a terminal of the drawing, or off it. */
  | { readonly put: PointId };

/** Resolves when all that follows from it has happened. */
export async function giveInput(exercise: Exercise, input: ExerciseInput): Promise<void> {
  if ('hear' in input) return exercise.hear(input.hear);
  if ('say' in input) return exercise.say(input.say);
  if ('order' in input) return exercise.order(input.order);
  if ('enter' in input) return exercise.enter(input.enter, input.words);
  if ('measure' in input) return exercise.measure(input.measure);
  exercise.probing.put(input.put);
}

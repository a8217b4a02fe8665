import type { Correction } from '../../../grammar/phrases/meaning.ts';
import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { chosenFor } from '../../../grammar/vocabulary/unit-choice.ts';

/** A bare number over a value of another unit than the chosen one: it may be meant in either, and is not guessed. */
export function mayBeInEither(
  { quantity, unit }: Reading,
  { value, unit: said }: Correction,
  facts: VisitFacts,
): boolean {
  const chosen = chosenFor(quantity, facts.units);
  return typeof value === 'number' && said === undefined && chosen !== undefined && chosen !== unit;
}

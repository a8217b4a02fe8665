import { fitOf } from '../../../grammar/phrases/compose/fit.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { Step } from '../chart/context.ts';

/** Whether a reading is of the quantity and at the places that the step asks for. */
export function answersStep(step: Step | undefined, reading: Reading): boolean {
  const ask = step?.ask;
  return ask?.kind === 'reading' && ask.quantity === reading.quantity && samePlaces(ask.at, reading.at);
}

/**
 * Whether a reading is what a test of the planner was asked for: a value that does not fit a unit that works is what one
 * tests for, so it is no reason to ask again, as long as it can be read there at all.
 */
export function answersTest(step: Step | undefined, reading: Reading): boolean {
  return step?.test !== undefined && answersStep(step, reading) && canBeRead(reading);
}

function canBeRead({ quantity, at, value, unit }: Reading): boolean {
  return MEASURANDS.some(
    (row) => row.quantity === quantity && samePlaces(row.at, at) && fitOf(row, value, unit) !== 'impossible',
  );
}

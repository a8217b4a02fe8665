import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { inBaseUnit } from '../../../grammar/vocabulary/in-base-unit.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';

/** So many times what can be true at all at its place. */
const BEYOND = 3;

/** Far above all that can be measured there: nobody read 7,211 amps, the number was misunderstood. */
export function isBeyondReason({ quantity, at, value, unit }: Reading): boolean {
  const row = MEASURANDS.find((one) => one.quantity === quantity && samePlaces(one.at, at));
  if (row === undefined) return false;
  const [read, most] = [
    inBaseUnit({ quantity, value, unit }),
    inBaseUnit({ quantity, value: row.high, unit: row.unit }),
  ];
  return read !== undefined && most !== undefined && read > BEYOND * most;
}

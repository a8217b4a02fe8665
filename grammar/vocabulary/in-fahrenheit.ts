import { inBaseUnit } from './in-base-unit.ts';
import type { Reading } from './measurement.ts';

/** A temperature as it was read, in degrees Fahrenheit; undefined where no number was read. */
export const inFahrenheit = (reading: Reading): number | undefined => inBaseUnit(reading);

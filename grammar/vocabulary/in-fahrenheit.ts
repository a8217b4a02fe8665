import type { Reading } from './measurement.ts';

/** A temperature as it was read, in degrees Fahrenheit; undefined where no number was read. */
export function inFahrenheit({ value, unit }: Reading): number | undefined {
  if (typeof value !== 'number') return undefined;
  return unit === 'Cel' ? value * 1.8 + 32 : value;
}

import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { pairName } from '../../../grammar/vocabulary/pairs.ts';
import { POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { UNITS_BY_CODE } from '../../../grammar/vocabulary/units.ts';

/** What a meter function is called on the screen. */
export const FUNCTION_NAMES: Readonly<Record<QuantityId, string>> = {
  voltage: 'volts a.c.',
  'voltage-dc': 'volts d.c.',
  current: 'amps',
  resistance: 'ohms',
  capacitance: 'microfarads',
  temperature: 'temperature',
  difference: 'difference',
  'wet-bulb': 'wet bulb',
  pressure: 'pressure',
  vacuum: 'vacuum',
  'static-pressure': 'static pressure',
  airflow: 'airflow',
  frequency: 'hertz',
  humidity: 'humidity',
  insulation: 'insulation',
  mass: 'weight',
  time: 'minutes',
};

export function showUnit(code: UnitCode): string {
  return Object.hasOwn(UNITS_BY_CODE, code) ? UNITS_BY_CODE[code].sign : code;
}

/** "118 V", "1.1 µF", "open line". */
export function showValue(value: Value, unit: UnitCode): string {
  return value === 'open' ? 'open line' : `${value} ${showUnit(unit)}`;
}

/** Terminal marks as they stand on the part ("L1 to ground"), other places by name. */
export function showPlace(at: readonly PointId[]): string {
  return pairName(at, 'shown') ?? at.map(showPoint).join(' to ');
}

export function showPoint(id: PointId): string {
  const mark = MARKS.exec(id)?.[0];
  if (mark !== undefined) return mark;
  return nameIn(POINTS_BY_ID, id);
}

/** Ids that are themselves the mark on the terminal. */
const MARKS = /^[LT][12]$/;

export function showReading(reading: Reading): string {
  const moved = reading.range === undefined ? '' : ` (${reading.range.low} to ${reading.range.high})`;
  const bench = reading.bench === true ? ', on the bench' : '';
  return `${showPlace(reading.at)} ${showValue(reading.value, reading.unit)}${moved}${bench}`;
}

import { offsetOf } from '../../vocabulary/in-base-unit.ts';
import type { Measurand } from '../../vocabulary/measurands.ts';
import type { UnitCode, Value } from '../../vocabulary/quantities.ts';
import { UNITS_BY_CODE, unitFor } from '../../vocabulary/units.ts';

/** How well a value fits a measurand: inside a likely band, possible at all, or not. */
export type Fit = 'likely' | 'possible' | 'impossible';
export const FIT_COST: Readonly<Record<Fit, number>> = { likely: 0, possible: 1, impossible: 3 };

/** `value` in the unit of the row; undefined where the units do not measure the same. */
export function inUnitOf(row: Measurand, value: number, unit: UnitCode): number | undefined {
  const from = unitFor(unit, row.quantity);
  const to = UNITS_BY_CODE[row.unit];
  if (from === undefined || from.base !== to.base) return undefined;
  return (value * from.factor + offsetOf(from, row.quantity) - offsetOf(to, row.quantity)) / to.factor;
}

/** How a value said in `unit` fits the row's plausible and likely values. */
export function fitOf(row: Measurand, value: Value, unit: UnitCode): Fit {
  if (value === 'open') return row.open ? 'likely' : 'impossible';
  const here = inUnitOf(row, value, unit);
  if (here === undefined || here < row.low || here > row.high) return 'impossible';
  return row.likely.some(([low, high]) => here >= low && here <= high) ? 'likely' : 'possible';
}

/** Whether it is one and the same to the trade which of two values was read: no turn of the row lies between them. */
export function changesNothing(row: Measurand, one: number, other: number, unit: UnitCode): boolean {
  const [a, b] = [inUnitOf(row, one, unit), inUnitOf(row, other, unit)];
  if (row.turns === undefined || a === undefined || b === undefined) return false;
  return row.turns.every((turn) => a < turn === b < turn);
}

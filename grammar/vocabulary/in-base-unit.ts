import type { Reading } from './measurement.ts';
import type { QuantityId } from './quantities.ts';
import { type Unit, unitFor } from './units.ts';

/**
 * The number of a reading in the base unit of its quantity (psi, microns, ounces, degrees Fahrenheit …), for whoever
 * reckons with it; the reading itself stays in the unit that was said. Undefined where no number was read, or where the
 * unit does not measure the quantity.
 */
export function inBaseUnit({
  quantity,
  value,
  unit,
}: Pick<Reading, 'quantity' | 'value' | 'unit'>): number | undefined {
  const row = unitFor(unit, quantity);
  if (typeof value !== 'number' || row === undefined) return undefined;
  return value * row.factor + offsetOf(row, quantity);
}

/** Where a unit's zero lies; a difference has none. */
export const offsetOf = (unit: Unit, quantity: QuantityId): number =>
  quantity === 'difference' ? 0 : (unit.offset ?? 0);

import type { PointId } from './points.ts';
import type { QuantityId, UnitCode, Value } from './quantities.ts';

/** One typed measurement, as spoken or typed. */
export interface Reading {
  readonly quantity: QuantityId;
  /** One place (a pipe, an air stream, a motor's lead) or the two probe tips, in the order of the points table. */
  readonly at: readonly PointId[];
  readonly value: Value;
  /** UCUM code. An open circuit still carries the unit of the meter function. */
  readonly unit: UnitCode;
  /** True for pressures read on a gauge. */
  readonly gauge?: true;
  /** A value that moved while it was read ("bouncing eighteen to twenty-two"): its lowest and highest. */
  readonly range?: { readonly low: number; readonly high: number };
  /** A value that was there and went ("eighty-six then drops out"): `value` is the peak. */
  readonly peak?: true;
  /** The meter's continuity tone stood for a number ("it beeps"): `value` 0 means no more than "closed". */
  readonly tone?: true;
  /** The part is out of the unit, discharged, on the bench. */
  readonly bench?: true;
}

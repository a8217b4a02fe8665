import type { QuantityId, UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { UNITS } from '../../../grammar/vocabulary/units.ts';

/** The unit a bare value is taken in: the base unit of the quantity that is expected. */
export function expectedUnit(quantity: QuantityId): UnitCode {
  const unit = UNITS.find(
    (one) => one.base === one.code && (one.quantities as readonly QuantityId[]).includes(quantity),
  );
  if (unit === undefined) throw new Error(`no unit for ${quantity}`);
  return unit.code;
}

import type { QuantityId, UnitCode } from '../../grammar/vocabulary/quantities.ts';
export const UNIT_OF = {} as Record<QuantityId, UnitCode>;

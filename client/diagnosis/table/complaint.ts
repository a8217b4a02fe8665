import type { Moment } from '../measuring/test-model.ts';
import { HEALTHY_SCATTER } from '../unit/draw-unit.ts';
import type { Residuals } from '../unit/unit.ts';

/** A part that is weak and still does its work seldom brings a technician (our figure). */
const UNNOTICED = 0.2;

/**
 * How likely the drawn unit is to be called out for "does not cool": surely when something stands still that should
 * run, runs that should stand still, or cools visibly worse than a healthy unit.
 */
export function complaintChance({ unit, cooling, idle }: Moment): number {
  const { compressor, fan, blower } = cooling.state;
  if (compressor === 'stopped' || fan === 'stopped' || blower === 'stopped' || unit.reversed) return 1;
  if (cooling.state.unloaded) return 1;
  if (idle.state.compressor === 'turning' || unit.coilIced) return 1;
  const figures = (Object.keys(HEALTHY_SCATTER) as (keyof Residuals)[]).filter((f) => f !== 'standing');
  const worst = Math.max(...figures.map((f) => Math.abs(unit.residuals[f]) / HEALTHY_SCATTER[f]));
  return worst > 2.5 ? 1 : UNNOTICED;
}

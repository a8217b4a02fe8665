import type { Moment } from '../measuring/test-model.ts';
import { HEALTHY_SCATTER } from '../unit/draw-unit.ts';
import type { Residuals } from '../unit/unit.ts';

/** What the thermometers and gauges themselves and our expectation add, °F. */
const READING_SPREAD: Readonly<Residuals> = {
  evaporating: 2.5,
  superheat: 3.5,
  condensing: 3.5,
  subcooling: 2.5,
  discharge: 8,
  condenserRise: 3,
  airDrop: 1.8,
  standing: 1.5,
};

export interface Predicted {
  readonly mean: number;
  readonly spread: number;
  /** What it reads as well, as often: before something tripped. */
  readonly before?: { readonly mean: number; readonly spread: number };
}

/** A compressor at rest: pressures level out near the temperature of the air around. */
const AT_REST: Readonly<Record<keyof Residuals, Predicted>> = {
  evaporating: { mean: 40, spread: 10 },
  superheat: { mean: -9, spread: 8 },
  condensing: { mean: -22, spread: 6 },
  subcooling: { mean: -9, spread: 5 },
  discharge: { mean: -75, spread: 15 },
  condenserRise: { mean: -18, spread: 3 },
  airDrop: { mean: -18, spread: 3 },
  standing: { mean: 0, spread: 2 },
};

/** Running without outdoor air: head climbs until something trips. */
const NO_OUTDOOR_AIR: Readonly<Record<keyof Residuals, Predicted>> = {
  evaporating: { mean: 8, spread: 5 },
  superheat: { mean: -3, spread: 6 },
  condensing: { mean: 38, spread: 14 },
  subcooling: { mean: -2, spread: 6 },
  discharge: { mean: 40, spread: 18 },
  condenserRise: { mean: 10, spread: 20 },
  airDrop: { mean: -6, spread: 4 },
  standing: { mean: 0, spread: 2 },
};

/** Running without indoor air: the coil freezes. */
const NO_INDOOR_AIR: Readonly<Record<keyof Residuals, Predicted>> = {
  evaporating: { mean: -24, spread: 8 },
  superheat: { mean: -8, spread: 6 },
  condensing: { mean: -9, spread: 5 },
  subcooling: { mean: -1, spread: 4 },
  discharge: { mean: -15, spread: 12 },
  condenserRise: { mean: -10, spread: 4 },
  airDrop: { mean: 4, spread: 14 },
  standing: { mean: 0, spread: 2 },
};

/** Reversing valve left in heating: the coils have changed places. */
const REVERSED: Readonly<Record<keyof Residuals, Predicted>> = {
  evaporating: { mean: 25, spread: 12 },
  superheat: { mean: 0, spread: 8 },
  condensing: { mean: -3, spread: 10 },
  subcooling: { mean: 0, spread: 6 },
  discharge: { mean: -5, spread: 14 },
  condenserRise: { mean: -28, spread: 6 },
  airDrop: { mean: -38, spread: 6 },
  standing: { mean: 0, spread: 2 },
};

/**
 * What a compressor that pumps two thirds leaves to be read: less head, a warmer coil, air that is cooled less (signs and
 * sizes common practice, ours).
 */
const UNLOADED: Readonly<Residuals> = {
  evaporating: 5,
  superheat: 1,
  condensing: -6,
  subcooling: -1,
  discharge: -9,
  condenserRise: -5,
  airDrop: -5,
  standing: 0,
};

/** A residual under the drawn unit, gated on what runs. °F. */
export function predictResidual({ unit, cooling }: Moment, figure: keyof Residuals): Predicted {
  const { compressor, fan, blower } = cooling.state;
  if (figure !== 'standing') {
    if (compressor === 'stopped') return AT_REST[figure];
    if (unit.reversed) return REVERSED[figure];
    if (fan === 'stopped') return NO_OUTDOOR_AIR[figure];
    if (blower === 'stopped') return NO_INDOOR_AIR[figure];
  }
  const shift = cooling.state.unloaded ? unit.unloadedShift * UNLOADED[figure] : 0;
  return { mean: unit.residuals[figure] + shift, spread: Math.hypot(READING_SPREAD[figure], HEALTHY_SCATTER[figure]) };
}

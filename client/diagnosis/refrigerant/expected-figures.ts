import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { RefrigerantId, UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Residuals } from '../unit/unit.ts';
import { saturationTemperature } from './saturation.ts';

/** Latest number read for each test: °F and psi gauge. */
export type Readings = ReadonlyMap<TestId, number>;

/** A figure against what its conditions make expected, °F: once for each metering device. */
export interface Residual {
  readonly fixed: number;
  readonly valve: number;
  /** What the expectation itself is unsure of, because a condition was not read, °F. */
  readonly unsure: number;
}

/** Conditions taken when nobody read them: AHRI 210/240 test A indoors; a warm day outdoors. */
const USUAL = { outdoor: 90, returnAir: 79, wetBulb: 66 } as const;

/** psi absolute at an altitude in feet (U.S. Standard Atmosphere 1976, troposphere). */
export function atmosphere(altitudeFeet: number): number {
  return 14.695949 * (1 - 6.8754e-6 * altitudeFeet) ** 5.2559;
}

/** The wet bulb that was read, unless the dry bulb denies it: it cannot be the warmer of the two. */
export function wetBulbOf(readings: Readings): number | undefined {
  const wetBulb = readings.get('wet-bulb-return-air');
  const dryBulb = readings.get('temperature-return-air');
  return wetBulb !== undefined && dryBulb !== undefined && wetBulb > dryBulb + 2 ? undefined : wetBulb;
}

function conditions(readings: Readings) {
  const outdoor = readings.get('temperature-outdoor-air');
  const returnAir = readings.get('temperature-return-air');
  const wetBulb = wetBulbOf(readings);
  const guessedWetBulb = (returnAir ?? USUAL.returnAir) - 13;
  return {
    outdoor: outdoor ?? USUAL.outdoor,
    returnAir: returnAir ?? USUAL.returnAir,
    wetBulb: wetBulb ?? guessedWetBulb,
    outdoorUnsure: outdoor === undefined ? 7 : 0,
    wetBulbUnsure: wetBulb === undefined ? (returnAir === undefined ? 4 : 3) : 0,
  };
}
type Conditions = ReturnType<typeof conditions>;

/** What a healthy unit in cooling shows, °F. Slopes after common practice for comfort cooling; widths are drawn. */
const EXPECTED: Readonly<Record<keyof Residuals, (c: Conditions, profile: UnitProfile) => Residual>> = {
  evaporating: (c) => same(44 + 0.55 * (c.wetBulb - 67) + 0.1 * (c.outdoor - 95), 0.55 * c.wetBulbUnsure),
  // The rule of thumb for a fixed orifice, (3·WB − 80 − DB)/2; a valve holds 10 or so.
  superheat: (c) => ({
    fixed: Math.min(30, Math.max(5, (3 * c.wetBulb - 80 - c.outdoor) / 2)),
    valve: 10,
    unsure: Math.hypot(1.5 * c.wetBulbUnsure, 0.5 * c.outdoorUnsure),
  }),
  condensing: (c) => same(c.outdoor + 20, c.outdoorUnsure),
  subcooling: (_, profile) => same(profile.plateSubcooling ?? 10, profile.plateSubcooling === undefined ? 1.5 : 0),
  discharge: (c) => same(c.outdoor + 78, c.outdoorUnsure),
  condenserRise: (c) => same(18, 0.05 * c.outdoorUnsure),
  standing: (c) => same(c.outdoor, c.outdoorUnsure),
  airDrop: (c) => same(19.5 - 0.7 * (c.wetBulb - 67) + 0.5 * (c.returnAir - 80), 0.7 * c.wetBulbUnsure),
};

function same(value: number, unsure: number): Residual {
  return { fixed: value, valve: value, unsure };
}

const absolute = (gauge: number, profile: UnitProfile) => gauge + atmosphere(profile.altitudeFeet ?? 0);

function saturated(fluid: RefrigerantId, phase: 'bubble' | 'dew', gauge: number | undefined, profile: UnitProfile) {
  return gauge === undefined ? undefined : saturationTemperature(fluid, phase, absolute(gauge, profile));
}

/** The figure itself, °F, from the raw readings; undefined while one is missing. */
export function figureOf(figure: keyof Residuals, readings: Readings, profile: UnitProfile): number | undefined {
  const fluid = profile.refrigerant;
  const get = (id: TestId) => readings.get(id);
  const less = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? undefined : a - b;
  switch (figure) {
    case 'evaporating':
      return fluid && saturated(fluid, 'dew', get('pressure-suction'), profile);
    case 'superheat':
      return fluid && less(get('temperature-suction-line'), saturated(fluid, 'dew', get('pressure-suction'), profile));
    case 'condensing':
      return fluid && saturated(fluid, 'bubble', get('pressure-liquid'), profile);
    case 'standing':
      return fluid && saturated(fluid, 'bubble', get('pressure-standing'), profile);
    case 'subcooling':
      return fluid && less(saturated(fluid, 'bubble', get('pressure-liquid'), profile), get('temperature-liquid-line'));
    case 'discharge':
      return get('temperature-discharge-line');
    case 'condenserRise':
      return less(get('temperature-condenser-air-out'), get('temperature-outdoor-air'));
    case 'airDrop':
      return less(get('temperature-return-air'), get('temperature-supply-air'));
  }
}

/** What a healthy unit would show under the conditions read so far, °F. */
export function expectedFigure(figure: keyof Residuals, readings: Readings, profile: UnitProfile): Residual {
  return EXPECTED[figure](conditions(readings), profile);
}

/** The figure less its expectation; undefined while a reading is missing. */
export function residualOf(figure: keyof Residuals, readings: Readings, profile: UnitProfile): Residual | undefined {
  const value = figureOf(figure, readings, profile);
  if (value === undefined) return undefined;
  const expected = expectedFigure(figure, readings, profile);
  return { fixed: value - expected.fixed, valve: value - expected.valve, unsure: expected.unsure };
}

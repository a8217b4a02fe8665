import type { TestId } from '../../../grammar/vocabulary/tests.ts';

/**
 * °F between which a thermometer in that place at a cooling unit can stand (common practice, wide: weather from the
 * coldest to the hottest that was recorded; hot gas in a suction line whose reversing valve sticks).
 */
const FAHRENHEIT: Readonly<Partial<Record<TestId, readonly [low: number, high: number]>>> = {
  'temperature-outdoor-air': [-60, 140],
  'temperature-return-air': [30, 130],
  'wet-bulb-return-air': [20, 100],
  'temperature-supply-air': [-20, 200],
  'temperature-condenser-air-out': [-60, 220],
  'temperature-suction-line': [-60, 300],
  'temperature-liquid-line': [-60, 220],
  'temperature-discharge-line': [-60, 400],
};

/** Why a value in the test's own unit cannot have been read there; nothing where it can. */
export function beyondLimits(test: TestId, value: number): string | undefined {
  const limits = FAHRENHEIT[test];
  if (limits === undefined || (value >= limits[0] && value <= limits[1])) return undefined;
  return `${Math.round(value)} °F for ${test}, outside ${limits[0]} to ${limits[1]}`;
}

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  coolingCapacity,
  type MoistAir,
  moistAir,
  standardPressure,
  wetBulbFromHumidity,
} from '../../client/diagnosis/air/moist-air.ts';
import { atmosphere } from '../../client/diagnosis/refrigerant/expected-figures.ts';

/** ASHRAE Handbook Fundamentals 2017 ch. 1 and CoolProp 8 humid air: the source stands in each row of the file. */
const rows = readFileSync('fixtures/reference/psychro_checks.csv', 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([point, quantity, , expected]) => ({ point: point!, quantity: quantity!, expected: Number(expected) }));

const SEA = 14.696;

/** The state that a row of the file names. */
function stateOf(point: string): MoistAir | undefined {
  if (point.startsWith('1')) return moistAir(100, 65, SEA);
  if (point.startsWith('2')) return moistAir(77, 77, SEA);
  if (point.startsWith('3')) return moistAir(41, 41, SEA);
  if (point.startsWith('4')) return moistAir(77, wetBulbFromHumidity(77, 0, SEA), SEA);
  const named = /^CoolProp: (\d+)\/(\d+)\/(\d+)ft$/.exec(point);
  return named ? moistAir(Number(named[1]), Number(named[2]), standardPressure(Number(named[3]))) : undefined;
}

function figureOf(air: MoistAir, quantity: string): number {
  const figures: Record<string, number> = {
    W: air.humidityRatio,
    Ws: air.humidityRatio,
    Tdp: air.dewPoint,
    RH: air.relativeHumidity,
    h: air.enthalpy,
    hs: air.enthalpy,
    v: air.volume,
    pws: (SEA * air.humidityRatio) / (0.621945 + air.humidityRatio),
  };
  return figures[quantity]!;
}

describe('moist air against the handbook', () => {
  for (const { point, quantity, expected } of rows) {
    const air = stateOf(point);
    if (!air) continue;
    it(`${point}: ${quantity} ${expected}`, () => {
      const figure = figureOf(air, quantity);
      // The library itself is up to half a point off in relative humidity.
      if (quantity === 'RH') expect(Math.abs(figure - expected)).toBeLessThanOrEqual(0.005);
      else expect(Math.abs(figure / expected - 1)).toBeLessThanOrEqual(0.01);
    });
  }

  it('the standard atmosphere at 1,000, 3,000 and 10,000 ft, by both of our ways', () => {
    for (const { point, expected } of rows.filter((r) => r.point.startsWith('5'))) {
      const feet = Number(/(\d+) ft/.exec(point)![1]);
      expect(Math.abs(standardPressure(feet) / expected - 1)).toBeLessThan(0.001);
      expect(Math.abs(atmosphere(feet) / expected - 1)).toBeLessThan(0.001);
    }
  });

  it('refuses a wet bulb above the dry bulb', () => {
    expect(() => moistAir(75, 80, SEA)).toThrow(/bad-reading/);
  });
});

describe('capacity with local density', () => {
  // 1200 cfm, 80/67 entering, 55/54 leaving (derived from psychrometrics; 4.5 is the 0.075 lb/ft³ rule).
  it('46,158 Btu/h at sea level, where the rule of thumb says 47,945', () => {
    const [entering, leaving] = [moistAir(80, 67, SEA), moistAir(55, 54, SEA)];
    expect(Math.round(coolingCapacity(1200, entering, leaving).total / 100)).toBe(462);
    expect(4.5 * 1200 * (entering.enthalpy - leaving.enthalpy)).toBeCloseTo(47_945, -2);
  });

  it('43,546 Btu/h at 5,000 ft, where it says 54,613', () => {
    const p = standardPressure(5000);
    const [entering, leaving] = [moistAir(80, 67, p), moistAir(55, 54, p)];
    expect(Math.round(coolingCapacity(1200, entering, leaving).total / 100)).toBe(435);
    expect(4.5 * 1200 * (entering.enthalpy - leaving.enthalpy)).toBeCloseTo(54_613, -2);
  });

  it('sensible heat is a part of the total', () => {
    const { sensible, total } = coolingCapacity(1200, moistAir(80, 67, SEA), moistAir(55, 54, SEA));
    expect(sensible).toBeGreaterThan(0.6 * total);
    expect(sensible).toBeLessThan(total);
  });
});

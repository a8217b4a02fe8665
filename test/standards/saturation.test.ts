import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { subcooling, superheat } from '../../client/diagnosis/refrigerant/charge-checks.ts';
import { saturationPressure, saturationTemperature } from '../../client/diagnosis/refrigerant/saturation.ts';
import { SATURATION_EQUATIONS } from '../../client/diagnosis/refrigerant/saturation-equations.ts';
import type { RefrigerantId } from '../../grammar/vocabulary/unit-profile.ts';

/** Reference: CoolProp 8.0.0 full equations of state, −20…150 °F (see the file's own source column). */
const rows = readFileSync('fixtures/reference/saturation_reference.csv', 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([fluid, t, bubble, dew]) => ({
    fluid: fluid as RefrigerantId,
    t: Number(t),
    bubble: Number(bubble),
    dew: Number(dew),
  }));

describe('saturation against the reference equations of state', () => {
  for (const fluid of Object.keys(SATURATION_EQUATIONS) as RefrigerantId[]) {
    it(`${fluid} agrees within 0.05 °F at bubble and dew, from −20 to 150 °F`, () => {
      const own = rows.filter((row) => row.fluid === fluid);
      expect(own.length).toBe(35);
      for (const { t, bubble, dew } of own) {
        expect(Math.abs(saturationTemperature(fluid, 'bubble', bubble) - t)).toBeLessThanOrEqual(0.05);
        expect(Math.abs(saturationTemperature(fluid, 'dew', dew) - t)).toBeLessThanOrEqual(0.05);
      }
    });
  }

  it('turns a temperature into a pressure and back', () => {
    for (const { fluid, t } of rows) {
      expect(saturationTemperature(fluid, 'dew', saturationPressure(fluid, 'dew', t))).toBeCloseTo(t, 5);
    }
  });

  it('reads superheat at the dew point and subcooling at the bubble point of a blend with glide', () => {
    // R-407C glides 8–11 °F (derived from the same data).
    const dew = saturationTemperature('R-407C', 'dew', 80);
    const bubble = saturationTemperature('R-407C', 'bubble', 80);
    expect(dew - bubble).toBeGreaterThan(8);
    expect(dew - bubble).toBeLessThan(12);
    expect(superheat('R-407C', 80 - 14.695949, dew + 10)).toBeCloseTo(10, 6);
    expect(subcooling('R-407C', 80 - 14.695949, bubble - 10)).toBeCloseTo(10, 6);
  });
});

describe('worked checks, derived from the saturation data', () => {
  it('R-410A, 355 psig, liquid line 95 °F: bubble 107.7 °F, subcooling 12.7 °F', () => {
    expect(saturationTemperature('R-410A', 'bubble', 355 + 14.695949)).toBeCloseTo(107.7, 1);
    expect(subcooling('R-410A', 355, 95)).toBeCloseTo(12.7, 1);
  });

  it('R-22, 70 psig, suction line 51 °F: superheat 10.0 °F', () => {
    expect(superheat('R-22', 70, 51)).toBeCloseTo(10, 1);
  });

  it('14.7 psia assumed at 5,000 ft costs 1.1 °F on R-410A at 118 psig and 2.6 °F on R-134a at 35 psig', () => {
    const error = (fluid: RefrigerantId, psig: number) =>
      superheat(fluid, psig, 60, { altitudeFeet: 5000 }) - superheat(fluid, psig, 60);
    expect(error('R-410A', 118)).toBeCloseTo(1.1, 1);
    expect(error('R-134a', 35)).toBeCloseTo(2.6, 1);
  });
});

describe('saturation outside its limits', () => {
  it('refuses instead of extrapolating', () => {
    expect(() => saturationTemperature('R-410A', 'bubble', 900)).toThrow(
      expect.objectContaining({ code: 'saturation-out-of-range' }),
    );
    expect(() => saturationPressure('R-22', 'dew', 260)).toThrow(
      expect.objectContaining({ code: 'saturation-out-of-range' }),
    );
    expect(() => saturationTemperature('R-410A', 'dew', Number.NaN)).toThrow(
      expect.objectContaining({ code: 'saturation-out-of-range' }),
    );
  });

  it('refuses a fluid it has no data for', () => {
    expect(() => saturationPressure('R-999' as RefrigerantId, 'dew', 40)).toThrow(
      expect.objectContaining({ code: 'unknown-refrigerant' }),
    );
  });
});

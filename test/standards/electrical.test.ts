import { describe, expect, it } from 'vitest';
import {
  capacitanceUnderLoad,
  contactDrop,
  judgeWithGuard,
  percentOfRating,
  voltageUnbalance,
  windingSum,
} from '../../client/diagnosis/electrical/electrical-arithmetic.ts';

describe('capacitance under load (arithmetic: C = 10⁶·I ÷ 2πfV)', () => {
  it('5.6 A and 371 V at 60 Hz are 40.04 µF: +0.1 % on 40', () => {
    const c = capacitanceUnderLoad(5.6, 371);
    expect(c).toBeCloseTo(40.04, 2);
    expect(percentOfRating(c, 40)).toBeCloseTo(0.1, 1);
  });

  it('7.3 A and 360 V are 53.79 µF: −10.35 % on 60, outside ±10 % and its guard of 0.2 %', () => {
    const c = capacitanceUnderLoad(7.3, 360);
    expect(c).toBeCloseTo(53.79, 2);
    expect(percentOfRating(c, 60)).toBeCloseTo(-10.35, 2);
    expect(judgeWithGuard(c, 54, 66, 0.1)).toBe('does not fit');
  });

  it("4.75 A and 330 V are 38.18 µF: inside ±5 % of 40 by less than the meter's own 3 %: marginal", () => {
    const c = capacitanceUnderLoad(4.75, 330);
    expect(c).toBeCloseTo(38.18, 2);
    expect(percentOfRating(c, 40)).toBeCloseTo(-4.55, 2);
    expect(judgeWithGuard(c, 38, 42, 0.03 * c)).toBe('marginal');
  });

  it('3183.1·I/V at 50 Hz', () => {
    expect(capacitanceUnderLoad(1, 1, 50)).toBeCloseTo(3183.1, 1);
    expect(capacitanceUnderLoad(1, 1)).toBeCloseTo(2652.6, 1);
  });
});

describe('windings', () => {
  // R(R–S) = R(C–R) + R(C–S): series windings; tolerance the larger of 0.3 Ω or 5 % (common practice).
  it('sums within 0.3 Ω or 5 %, whichever is larger', () => {
    expect(windingSum(0.8, 2.4, 3.4).fits).toBe(true);
    expect(windingSum(0.8, 2.4, 3.6).fits).toBe(false);
    expect(windingSum(20, 40, 62.9).fits).toBe(true);
    expect(windingSum(20, 40, 63.1).fits).toBe(false);
  });
});

describe('supply and contacts', () => {
  it('unbalance of 230, 232 and 225 V is 1.75 % (NEMA MG 1-14.36), and two legs have none', () => {
    expect(voltageUnbalance([230, 232, 225])).toBeCloseTo((100 * 4) / 229, 6);
    expect(() => voltageUnbalance([230, 232])).toThrow(/three-phase only/);
  });

  it('6.24 V across a closed pole at 208 V is the 3 % limit (RSES), and costs watts', () => {
    expect(contactDrop(6.24, 208, 15).percent).toBeCloseTo(3, 6);
    expect(contactDrop(6.3, 208, 15).replace).toBe(true);
    expect(contactDrop(0.2, 208, 15)).toMatchObject({ replace: false, watts: 3 });
  });

  it('a 230 V unit fits 197–253 V with the meter error as a guard (derived from C84.1 and NEMA)', () => {
    expect(judgeWithGuard(236, 197, 253, 2.7)).toBe('fits');
    expect(judgeWithGuard(198, 197, 253, 2.3)).toBe('marginal');
    expect(judgeWithGuard(180, 197, 253, 2.1)).toBe('does not fit');
  });

  it('refuses negative, zero and NaN', () => {
    expect(() => capacitanceUnderLoad(-1, 370)).toThrow(/bad-reading/);
    expect(() => capacitanceUnderLoad(5, 0)).toThrow(/bad-reading/);
    expect(() => percentOfRating(4, Number.NaN)).toThrow(/bad-reading/);
  });
});

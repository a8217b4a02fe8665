import { expect, it } from 'vitest';
import { atmosphere } from '../../client/diagnosis/refrigerant/expected-figures.ts';

it.each([
  [1_000, 14.175],
  [3_000, 13.173],
  [10_000, 10.108],
])(
  'the standard atmosphere at %d ft is %d psia (ASHRAE Handbook Fundamentals 2017, chapter 1, table 1)',
  (feet, psia) => {
    expect(Math.abs(atmosphere(feet) / psia - 1)).toBeLessThan(0.001);
  },
);

import { describe, expect, it } from 'vitest';
import { runRound } from './quality.ts';

/**
 * The diagnosis against hidden faults of a second simulator (other equations, other draws). Small seeded rounds: the
 * floors lie below what the full report measures, by what so few cases can scatter.
 */
describe('hidden faults of a simulator written apart', () => {
  it('with the right profile: named right, seldom surely wrong, in fewer tests than the fixed order takes', () => {
    const { diagnosis, order } = runRound({
      wrong: 'matched',
      designs: 3,
      casesEach: 30,
      faults: 1,
      seed: 21,
      misread: 0.02,
    });
    expect(diagnosis.cases).toBe(90);
    expect(diagnosis.right).toBeGreaterThanOrEqual(0.96);
    expect(diagnosis.confidentlyWrong).toBeLessThanOrEqual(0.012);
    expect(diagnosis.medianTests).toBeLessThanOrEqual(9);
    expect(diagnosis.right).toBeGreaterThan(order.right + 0.2);
    expect(diagnosis.meanTests).toBeLessThan(order.meanTests);
  }, 120_000);

  it('with the supply given wrongly: still right', () => {
    const { diagnosis } = runRound({ wrong: 'supply', designs: 2, casesEach: 25, faults: 1, seed: 22, misread: 0.02 });
    expect(diagnosis.right).toBeGreaterThanOrEqual(0.94);
    expect(diagnosis.confidentlyWrong).toBeLessThanOrEqual(0.02);
  }, 120_000);

  it('two faults: the first is repaired, the second found by starting again', () => {
    const { diagnosis } = runRound({ wrong: 'matched', designs: 2, casesEach: 20, faults: 2, seed: 23, misread: 0.01 });
    expect(diagnosis.right).toBeGreaterThanOrEqual(0.88);
  }, 120_000);
});

import { expect, it } from 'vitest';
import { runRound } from './quality.ts';

/** A first look that any breakage of the diagnosis shows in; the rounds that measure it stand in the long run. */
it('twenty hidden faults of a simulator written apart are named right, and never surely wrong', () => {
  const { diagnosis, order } = runRound({
    wrong: 'matched',
    designs: 1,
    casesEach: 20,
    faults: 1,
    seed: 21,
    misread: 0,
  });
  expect(diagnosis.cases).toBe(20);
  expect(diagnosis.right).toBeGreaterThanOrEqual(0.95);
  expect(diagnosis.confidentlyWrong).toBe(0);
  expect(diagnosis.right).toBeGreaterThan(order.right + 0.2);
}, 120_000);

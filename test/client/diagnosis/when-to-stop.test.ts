import { describe, expect, it } from 'vitest';
import { isNotWorthMore } from '../../../client/diagnosis/planner/when-to-stop.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';

/** A leader with this probability, the rest on three others. */
function suspects(fault: FaultId, probability: number) {
  const others: readonly FaultId[] = ['supply-low', 'float-switch-open', 'overcharge'];
  return [
    { fault, probability },
    ...others.map((other) => ({ fault: other, probability: (1 - probability) / others.length })),
  ];
}

const test = (worth: number) => ({ test: 'look-oil', worth, cost: 2 }) as const;

describe('when one more test is not worth its minutes', () => {
  it('a coil to be washed is washed at once where the next test is dear', () => {
    expect(isNotWorthMore(suspects('condenser-dirty', 0.92), test(0.02))).toBe(true);
  });

  it('a compressor is measured on, at the same doubt and the same test', () => {
    expect(isNotWorthMore(suspects('compressor-seized', 0.92), test(0.02))).toBe(false);
  });

  it('a test that tells much is done in either case', () => {
    expect(isNotWorthMore(suspects('condenser-dirty', 0.92), test(0.5))).toBe(false);
  });

  it('a leader below 0.8 is never a finding for want of a cheap test', () => {
    expect(isNotWorthMore(suspects('condenser-dirty', 0.79), test(1e-6))).toBe(false);
    expect(isNotWorthMore(suspects('condenser-dirty', 0.81), test(1e-6))).toBe(true);
  });
});

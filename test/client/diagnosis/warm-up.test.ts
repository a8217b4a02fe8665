import { expect, test } from 'vitest';
import { makeDiagnosis } from '../../../client/diagnosis/make-diagnosis.ts';
import { STOCK_PROFILES } from '../../../client/diagnosis/stock/stock-profiles.ts';
import { warmUp } from '../../../client/diagnosis/warm-up.ts';

test.each(STOCK_PROFILES)(
  'warming up goes through whole visits of $id and leaves its answers as they are',
  (profile) => {
    const diagnosis = makeDiagnosis(profile);
    const before = diagnosis.assess([], []);
    const steps = [...warmUp(diagnosis)].length;
    expect(steps).toBeGreaterThanOrEqual(20);
    expect(diagnosis.assess([], [])).toEqual(before);
  },
);

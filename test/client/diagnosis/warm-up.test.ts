import { expect, test } from 'vitest';
import { DiagnosisError } from '../../../client/diagnosis/errors.ts';
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

test('a made-up reading that is refused ends its walk and nothing else', () => {
  const diagnosis = makeDiagnosis(STOCK_PROFILES[0]!);
  const refusing: typeof diagnosis = {
    ...diagnosis,
    assess: (evidence, parked) => {
      if (evidence.length === 3) throw new DiagnosisError('saturation-out-of-range', 'made up');
      return diagnosis.assess(evidence, parked);
    },
  };
  expect([...warmUp(refusing)]).toHaveLength(24);
});

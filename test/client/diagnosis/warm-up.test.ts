import { expect, test } from 'vitest';
import { DiagnosisError } from '../../../client/diagnosis/errors.ts';
import { warmUp } from '../../../client/diagnosis/warm-up.ts';
import { tries } from '../../how-much.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';
import { PROFILES } from './profiles.ts';

test.each(PROFILES.slice(0, tries(1, PROFILES.length)))(
  'warming up goes through whole visits of $id and leaves its answers as they are',
  (profile) => {
    const diagnosis = diagnosisOf(profile);
    const before = diagnosis.assess([], []);
    const steps = [...warmUp(diagnosis)].length;
    expect(steps).toBeGreaterThanOrEqual(20);
    expect(diagnosis.assess([], [])).toEqual(before);
  },
);

test('a made-up reading that is refused ends its walk and nothing else', () => {
  const diagnosis = diagnosisOf(PROFILES[0]!);
  const refusing: typeof diagnosis = {
    ...diagnosis,
    assess: (evidence, parked) => {
      if (evidence.length === 3) throw new DiagnosisError('saturation-out-of-range', 'made up');
      return diagnosis.assess(evidence, parked);
    },
  };
  expect([...warmUp(refusing)]).toHaveLength(24);
});

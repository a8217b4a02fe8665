import type { RankedSuspects } from '../../grammar/visit/inputs.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Assessment, Diagnosis, Evidence } from '../diagnosis/diagnosis.ts';
import { type Weighed, weighTest } from './weigh-test.ts';

/** The diagnosis as an exercise asks it: here, or in a worker that holds the table of the unit. */
export interface AskedDiagnosis {
  readonly assess: (evidence: readonly Evidence[], parked: readonly TestId[]) => Promise<Assessment>;
  readonly testFor: (reading: Parameters<Diagnosis['testFor']>[0]) => Promise<TestId | undefined>;
  /** What a test could tell before it was made. */
  readonly weigh: (
    test: TestId,
    evidence: readonly Evidence[],
    assessment: RankedSuspects | undefined,
  ) => Promise<Weighed>;
}

/** A diagnosis that is asked where it stands. */
export function askHere(diagnosis: Diagnosis): AskedDiagnosis {
  return {
    assess: async (evidence, parked) => diagnosis.assess(evidence, parked),
    testFor: async (reading) => diagnosis.testFor(reading),
    weigh: async (test, evidence, assessment) => weighTest(test, evidence, assessment, diagnosis),
  };
}

import { TESTS, type TestId } from '../../../grammar/vocabulary/tests.ts';
import { AIR_TESTS } from './air-tests.ts';
import { LOOK_TESTS } from './look-tests.ts';
import { AMPS_TESTS, MICROFARADS_TESTS, OHMS_TESTS } from './part-tests.ts';
import type { TestModel } from './test-model.ts';
import { VOLTS_TESTS } from './volts-tests.ts';

/** Every test the vocabulary names: probes, place, needs, minutes, hazards, and what the instrument sees. */
export const TEST_MODELS: Readonly<Record<TestId, TestModel>> = {
  ...VOLTS_TESTS,
  ...AMPS_TESTS,
  ...OHMS_TESTS,
  ...MICROFARADS_TESTS,
  ...LOOK_TESTS,
  ...AIR_TESTS,
};

/** Test ids in the order of the vocabulary. */
export const TEST_IDS: readonly TestId[] = TESTS.map((test) => test.id);

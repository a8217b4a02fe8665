import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { TESTS_BY_ID, type TestId } from '../../../grammar/vocabulary/tests.ts';

/** Why a fault is found by exclusion however much was read: what would prove it is no reading that is asked for. */
const BEYOND_READINGS: Partial<Readonly<Record<FaultId, string>>> = {
  'indoor-coil-iced': 'thaw it, then read the air',
  'liquid-restriction': 'the drop across drier and valve is not read',
  'leaking-valves': 'no pump-down was made',
};

/** Why a finding is by exclusion: "unproved by amps of the compressor": passed over, or read at another moment. @param unproved not empty */
export function exclusionWords(fault: FaultId, unproved: readonly TestId[]): string {
  return BEYOND_READINGS[fault] ?? `unproved by ${unproved.map((test) => TESTS_BY_ID[test].name).join(', ')}`;
}

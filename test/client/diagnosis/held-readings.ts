import type { Taken } from '../../../client/diagnosis/posterior/take-readings.ts';
import { PROOF_ROWS } from '../../../client/diagnosis/proof/proof-rows.ts';
import { type Proof, proveRow } from '../../../client/diagnosis/proof/weigh-proof.ts';
import { OPEN_OHMS } from '../../../client/diagnosis/table/predict.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';

/** A result of a test, read so many times. */
export function reading(test: TestId, shown: number | 'open' | ObservationId, times = 1): Taken {
  const value = shown === 'open' ? OPEN_OHMS : typeof shown === 'number' ? shown : Number.NaN;
  const observation = typeof shown === 'string' && shown !== 'open' ? { observation: shown } : {};
  return { seq: 1, test, value, times, ...observation };
}

/** The row of a fault held against readings, on a plate of 240 volts and two capacitor sections. */
export function proofOf(fault: FaultId, readings: readonly Taken[], cannot: readonly TestId[] = [], plate = {}): Proof {
  const standing = { all: readings, taken: new Map(readings.map((r) => [r.test, r])), repaired: [] };
  const profile = {
    id: 'any',
    supply: { nominal: 240 },
    capacitor: { herm: 40, fan: 5 },
    compressor: { rla: 15, lra: 75 },
    hardStart: false,
    ...plate,
  };
  return proveRow(PROOF_ROWS[fault], {
    standing,
    profile: profile as never,
    canBeDone: (test) => !cannot.includes(test),
    isThere: () => true,
  });
}

/** Met directly, with nothing left and nothing against it. */
export const isProved = ({ lacking, unproved, denied }: Proof): boolean =>
  lacking.length + unproved.length + denied.length === 0;

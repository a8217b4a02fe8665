import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Diagnosis, Evidence } from '../../diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../../diagnosis/make-diagnosis.ts';

/**
 * Answers for whatever unit the visit holds: the table is built once for each profile and kept while it stays the
 * same. A nameplate value read on the way makes another profile. Whoever shows the wait is told 0, then each tenth of
 * the table as it is built, to 1.
 *
 * @param onMade is given each diagnosis once its table is built
 */
export function diagnoseFor(
  onProgress?: (share: number) => void,
  onMade?: (diagnosis: Diagnosis) => void,
): (unit: UnitProfile, evidence: readonly Evidence[], parked: readonly TestId[]) => Promise<Assessment> {
  let made: { readonly key: string; readonly diagnosis: Diagnosis } | undefined;
  return async (unit, evidence, parked) => {
    const key = JSON.stringify(unit);
    if (made?.key !== key) {
      onProgress?.(0);
      made = { key, diagnosis: makeDiagnosis(unit, { onProgress: byTenths(onProgress) }) };
      onMade?.(made.diagnosis);
    }
    return made.diagnosis.assess(evidence, parked);
  };
}

function byTenths(onProgress: ((share: number) => void) | undefined): (share: number) => void {
  let told = 0;
  return (share) => {
    const tenths = Math.floor(share * 10);
    if (tenths <= told) return;
    told = tenths;
    onProgress?.(tenths / 10);
  };
}

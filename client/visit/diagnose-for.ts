import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Diagnosis, Evidence } from '../diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../diagnosis/make-diagnosis.ts';

/**
 * Answers for whatever unit the visit holds: the table is built once for each profile and kept while it stays the
 * same. A nameplate value read on the way makes another profile.
 */
export function diagnoseFor(): (
  unit: UnitProfile,
  evidence: readonly Evidence[],
  parked: readonly TestId[],
) => Promise<Assessment> {
  let made: { readonly key: string; readonly diagnosis: Diagnosis } | undefined;
  return async (unit, evidence, parked) => {
    const key = JSON.stringify(unit);
    if (made?.key !== key) made = { key, diagnosis: makeDiagnosis(unit) };
    return made.diagnosis.assess(evidence, parked);
  };
}

import type { Diagnosis } from '../client/diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../client/diagnosis/make-diagnosis.ts';
import type { UnitProfile } from '../grammar/vocabulary/unit-profile.ts';

const made = new Map<string, Diagnosis>();

/** The diagnosis of a profile, its table built once for all files that run in one process: it takes about a second. */
export function diagnosisOf(profile: UnitProfile): Diagnosis {
  const key = JSON.stringify(profile);
  const known = made.get(key) ?? makeDiagnosis(profile);
  made.set(key, known);
  return known;
}

import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Evidence } from '../../diagnosis/diagnosis.ts';

/** What the page asks of the diagnosis worker; what comes back for it has the same number. */
export interface DiagnosisQuestion {
  readonly number: number;
  readonly unit: UnitProfile;
  readonly evidence: readonly Evidence[];
  readonly parked: readonly TestId[];
}

/** The reply, and before it, where the unit's table must be built first, how much of it is (0…1). */
export type DiagnosisNews = DiagnosisReply | { readonly building: number };

export type DiagnosisReply =
  | { readonly number: number; readonly answer: Assessment }
  | { readonly number: number; readonly sentence: string };

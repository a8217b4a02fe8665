import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Evidence } from '../../diagnosis/diagnosis.ts';

/** What the page asks of the diagnosis worker, and what comes back under the same number. */
export interface DiagnosisQuestion {
  readonly number: number;
  readonly unit: UnitProfile;
  readonly evidence: readonly Evidence[];
  readonly parked: readonly TestId[];
}

export type DiagnosisReply =
  | { readonly number: number; readonly answer: Assessment }
  | { readonly number: number; readonly sentence: string };

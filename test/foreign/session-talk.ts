import { makeDiagnosis } from '../../client/diagnosis/make-diagnosis.ts';
import { DiagnoseSession } from '../../client/terminal/diagnose-session.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Talk } from './interview.ts';

/** The talk of `npm run diagnose`, in this process; the table of a profile is built once for all its talks. */
export function sessionTalks(profile: UnitProfile): () => Talk {
  const diagnosis = makeDiagnosis(profile);
  return () => {
    const session = new DiagnoseSession(diagnosis);
    return { first: JSON.stringify(session.status()), hear: (line) => JSON.stringify(session.hear(line)) };
  };
}

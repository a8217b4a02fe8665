import type { Meaning, UnclearReason } from '../meaning.ts';

/** One meaning that a segment may have, before the whole utterance is weighed. */
export interface Draft {
  readonly meaning: Meaning;
  /** How far from expected and likely; 0 is best. */
  readonly cost: number;
  /** Why it must be asked, if it must. */
  readonly doubt?: UnclearReason;
  readonly twin?: number;
}

/** The one meaning there is, without a doubt. */
export const sure = (meaning: Meaning): Draft[] => [{ meaning, cost: 0 }];

/** The one meaning there is; asked where `clean` does not hold. */
export const unless = (clean: boolean, meaning: Meaning): Draft[] =>
  clean ? sure(meaning) : [{ meaning, cost: 0, doubt: 'needed-repair' }];

import type { Measurand } from '../../vocabulary/measurands.ts';
import type { Meaning, UnclearReason } from '../meaning.ts';

/** One meaning that a segment may have, before the whole utterance is weighed. */
export interface Draft {
  readonly meaning: Meaning;
  /** The row of the table that a reading was taken for. */
  readonly row?: Measurand;
  /** How far from expected and likely; 0 is best. */
  readonly cost: number;
  /** Why it must be asked, if it must. */
  readonly doubt?: UnclearReason;
  readonly twin?: number;
}

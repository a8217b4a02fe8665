import {
  DICTATIONS_BY_AS,
  type DictatedAs,
  JOB_ITEMS_BY_ID,
  type JobItemId,
} from '../../../grammar/vocabulary/job-items.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { WORKS_BY_ID, type WorkId } from '../../../grammar/vocabulary/works.ts';

export function itemWords(id: JobItemId): string {
  return nameIn(JOB_ITEMS_BY_ID, id);
}

/** The heading that words are dictated under. */
export function dictationWords(as: DictatedAs): string {
  return nameIn(DICTATIONS_BY_AS, as);
}

/** Something mended without a part. */
export function workWords(id: WorkId): string {
  return nameIn(WORKS_BY_ID, id);
}

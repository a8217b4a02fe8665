import { DICTATIONS, type DictatedAs, JOB_ITEMS, type JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import { WORKS, type WorkId } from '../../../grammar/vocabulary/works.ts';

export function itemWords(id: JobItemId): string {
  return JOB_ITEMS.find((item) => item.id === id)?.name ?? id;
}

/** The heading that words are dictated under. */
export function dictationWords(as: DictatedAs): string {
  return DICTATIONS.find((row) => row.as === as)?.name ?? as;
}

/** Something mended without a part. */
export function workWords(id: WorkId): string {
  return WORKS.find((work) => work.id === id)?.name ?? id;
}

import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';

/** What the page asks of the grammar in its worker; what comes back for it has the same number. */
export interface UnderstandQuestion {
  readonly number: number;
  readonly text: string;
  readonly expectation: Expectation;
  readonly options: UnderstandOptions;
}

export interface UnderstandReply {
  readonly number: number;
  readonly understanding: Understanding;
}

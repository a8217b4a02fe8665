import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';

/** What the page asks of the grammar in its worker. */
export interface UnderstandAsked {
  readonly text: string;
  readonly expectation: Expectation;
  readonly options: UnderstandOptions;
}

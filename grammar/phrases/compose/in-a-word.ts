import type { Expectation } from '../meaning.ts';
import type { Draft } from './draft.ts';
import type { Segment } from './segment.ts';

/** What a short answer costs among all that may be said: unasked, it is the last thing that words are taken for. */
export const IN_A_WORD_COST = 3;
/** Asked, the same words mean the point of what is asked before they mean anything else. */
const AS_ASKED = 0.8;

/** A short answer says what it means beside its question; beside another, or none, it says nothing. */
export function composeAnswer(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = segment.items.find((item) => item.tag === 'answer')?.answer;
  const meant = expectation?.answers?.find(({ answer }) => answer === said);
  return meant === undefined ? [] : [{ meaning: meant.means, cost: -IN_A_WORD_COST - AS_ASKED }];
}

import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { ActionDone } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { takeItem } from './take-job.ts';

/** What is asked by a yes or a no, and what each of them says. */
const YES_OR_NO: Readonly<Partial<Record<ActionDone, Readonly<Record<'yes' | 'no', JobItemId>>>>> = {
  'consent-asked': { yes: 'consent-given', no: 'consent-refused' },
  'sound-agreed': { yes: 'sound-kept', no: 'sound-not-kept' },
};

/**
 * A yes or a no to what a step asks, where no question and no caution stands before it.
 *
 * @returns whether it was the answer
 */
export function answersYesOrNo(turn: Turn, { accepted, understanding }: HeardUtterance): boolean {
  const { step, questions, caution, held } = turn.context;
  const { meaning, verdict } = understanding;
  if (!accepted || verdict !== 'logged' || meaning.kind !== 'command') return false;
  if (step?.ask.kind !== 'action' || questions.length > 0 || caution !== undefined || held) return false;
  const answers = YES_OR_NO[step.ask.done];
  if (answers === undefined || (meaning.command !== 'yes' && meaning.command !== 'no')) return false;
  takeItem(turn, answers[meaning.command]);
  return true;
}

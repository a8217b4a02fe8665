import type { Turn } from '../chart/turn.ts';
import { shortAnswers } from '../steps/short-answers.ts';

/**
 * A yes, a no or a "done" to what a step asks, where no question and no caution stands before it. A no to what cannot be
 * denied is "not yet".
 *
 * @returns whether it was the answer
 */
export function answersInAWord(turn: Turn, word: 'yes' | 'no' | 'done'): boolean {
  const { step, questions, caution, held } = turn.context;
  if (step === undefined || questions.length > 0 || caution !== undefined || held) return false;
  const answers = shortAnswers(step, turn.context);
  const means = answers[word] ?? (word === 'no' && step.ask.kind === 'action' ? answers['not-yet'] : undefined);
  if (means === undefined) return false;
  turn.raise({ type: 'meanings.left', meanings: [means] });
  return true;
}

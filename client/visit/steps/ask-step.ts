import { actionWords, type Pace, repairWords } from '../../words/talk/action-words.ts';
import { cautionById } from '../../words/talk/caution-words.ts';
import { lookStepWords, readingStepWords, underCautions } from '../../words/talk/step-words.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { cautionsFor } from '../rules/cautions-due.ts';
import { repairOf } from '../rules/repairs.ts';

/** The words that ask a step; a live step already cautioned begins with the caution's short form. */
export function stepWords(step: Step, context: VisitContext): string {
  const again = cautionsFor(step).map((id) => cautionById(id).again);
  return underCautions(
    again.filter((words) => words !== ''),
    askWords(step, context),
  );
}

/** A trainee is asked in full. */
export function paceOf({ role, pace }: VisitContext): Pace {
  return role === 'trainee' ? 'full' : pace;
}

/** What a step asks, without the short form of its caution. */
export function askWords(step: Step, context: VisitContext): string {
  const pace = paceOf(context);
  const { ask } = step;
  switch (ask.kind) {
    case 'action':
      return ask.done === 'part-fitted'
        ? repairWords(repairOf(context.finding?.fault), pace)
        : actionWords(ask.done, step.zone, pace);
    case 'look':
      return lookStepWords(step.id, { test: step.test, answers: ask.answers }, pace);
    case 'reading':
      return readingStepWords(step.id, { quantity: ask.quantity, at: ask.at, bench: step.needs.bench }, pace);
  }
}

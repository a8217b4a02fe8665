import type { Expectation } from '../../grammar/phrases/meaning.ts';
import type { VisitContext } from './context.ts';

/** What the visit expects to hear now, and the reading that "same on the other" would mean. */
export function expectationOf(context: VisitContext): Expectation {
  const latest = context.readings.at(-1)?.reading;
  return { ...awaited(context), ...(latest === undefined ? {} : { latest }) };
}

/** The asked reading, or the answer to the question that stands open. */
function awaited(context: VisitContext): Expectation {
  const { question, step, caution } = context;
  if (question?.kind === 'teen-or-ty') {
    return { readings: [question.reading], question: 'teen-or-ty', options: question.options };
  }
  if (question?.kind === 'confirm-reading') return { readings: [question.reading], question: 'confirm' };
  const asked =
    step?.ask.kind === 'reading' && caution === undefined ? [{ quantity: step.ask.quantity, at: step.ask.at }] : [];
  if (question !== undefined) return { readings: [], question: 'confirm' };
  return caution === undefined ? { readings: asked } : { readings: [], question: 'acknowledge' };
}

import type { AnswerMeant, Expectation, ReadAt } from '../../../grammar/phrases/meaning.ts';
import { latestReading, openQuestion } from '../../../grammar/visit/standing.ts';
import type { AnswerId } from '../../../grammar/vocabulary/answers.ts';
import type { PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import { isUsualChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { unreadSections } from '../rules/charged-sections.ts';
import { stepThatStood } from '../rules/refrigerant-plan.ts';
import { isHeldBack } from './answers-caution.ts';
import { openPlate } from './plate-steps.ts';
import { answersMeant, toldBefore } from './short-answers.ts';

/** What the visit expects to hear now, and the reading that "same on the other" would mean. */
export function expectationOf(context: VisitContext): Expectation {
  const latest = latestReading(context)?.reading;
  return { ...awaited(context), ...(latest === undefined ? {} : { latest }), ...inUnits(context) };
}

/** The units of a number without one. */
export function inUnits({ units }: Pick<VisitContext, 'units'>): Pick<Expectation, 'units'> {
  return isUsualChoice(units) ? {} : { units };
}

/** The asked reading, or the answer to the question that stands open. */
function awaited(context: VisitContext): Expectation {
  const { step } = context;
  const question = openQuestion(context);
  if (question?.kind === 'teen-or-ty') {
    return { readings: [question.reading], question: 'teen-or-ty', options: question.options };
  }
  if (question?.kind === 'which-place') {
    const { value, unit } = question;
    return {
      // Another number goes on with what is asked.
      readings:
        step?.ask.kind === 'reading' && !isHeldBack(context) ? [{ quantity: step.ask.quantity, at: step.ask.at }] : [],
      question: 'which-place',
      placeless: { value, ...(unit === undefined ? {} : { unit }) },
      answers: seenBesides(context),
    };
  }
  if (question?.kind === 'what-value')
    return { readings: question.of, question: 'what-value', answers: seenBesides(context) };
  const besides = [...YES, ...seenBesides(context)];
  if (question?.kind === 'confirm-reading')
    return { readings: [question.reading], question: 'confirm', answers: besides };
  const asked =
    step?.ask.kind === 'reading' && !isHeldBack(context)
      ? [{ quantity: step.ask.quantity, at: step.ask.at }]
      : [...sectionAsked(context), ...readAgain(context)];
  // A number goes on with what is asked.
  if (question?.kind === 'which-switch')
    return { readings: isHeldBack(context) ? [] : asked, question: 'which-switch', switched: question.state };
  if (question?.kind === 'still-off') return { readings: [], question: 'confirm', answers: STILL_OFF };
  const plate = step?.plate === undefined ? [] : openPlate(step, context);
  const ofPlate = plate.length === 0 ? {} : { plate };
  if (question !== undefined) return { readings: [], question: 'confirm', answers: besides, ...ofPlate };
  if (isHeldBack(context)) return { readings: [], question: 'acknowledge', answers: toldBefore(context) };
  const answers = step === undefined ? [] : answersMeant(step, context);
  return {
    // A bare number belongs to the plate while one is asked of it.
    readings: step?.plate?.some((field) => !MARKS.includes(field)) ? [] : asked,
    besides: sectionsLeft(context).slice(1),
    ...ofPlate,
    ...(answers.length === 0 ? {} : { answers }),
    ...(context.caution === undefined ? {} : { question: 'acknowledge' as const }),
    ...(isMeterAsked(step) ? { meter: true as const } : {}),
  };
}

/** Whatever says that nothing came back. */
const STILL_OFF: readonly AnswerMeant[] = (['did', 'still-off', 'off', 'locked', 'pulled', 'dead'] as const).map(
  (answer) => ({ answer, means: { kind: 'command', command: 'yes' } }),
);

/** "It is", "I did": said to a question they are a yes. */
const YES: readonly AnswerMeant[] = [{ answer: 'did', means: { kind: 'command', command: 'yes' } }];

/** Of a look as much as of what a question is about. */
const OF_EITHER: readonly AnswerId[] = ['did', 'good', 'on', 'off', 'in', 'none', 'pulled', 'dead', 'set', 'not-yet'];

/** Short answers of the look, or of what is asked on arrival, that waits behind a question, where they can be of nothing else: who gives them has gone on. */
function seenBesides(context: VisitContext): readonly AnswerMeant[] {
  const { step } = context;
  const isAsked = step?.ask.kind === 'look' || (step?.ask.kind === 'action' && step.source === 'arrive');
  if (!isAsked || isHeldBack(context)) return [];
  return answersMeant(step, context).filter(({ answer }) => !OF_EITHER.includes(answer));
}

const MARKS: readonly PlateField[] = ['model', 'serial'];

/** While discharging is asked for, a bare value is what is left in the first section that is not read. */
const sectionAsked = (context: VisitContext): readonly ReadAt[] => sectionsLeft(context).slice(0, 1);

function sectionsLeft(context: VisitContext): readonly ReadAt[] {
  const { step } = context;
  if (step?.ask.kind !== 'action' || step.ask.done !== 'capacitors-discharged' || isHeldBack(context)) return [];
  const left = step.zone === 'none' ? [] : unreadSections(step.zone, context);
  return left.map(({ at }) => ({ quantity: 'voltage-dc', at }));
}

/** A test that has stood its time is read beside whatever else is asked. */
function readAgain(context: VisitContext): Expectation['readings'] {
  const ask = stepThatStood(context)?.ask;
  return ask?.kind === 'reading' ? [{ quantity: ask.quantity, at: ask.at }] : [];
}

function isMeterAsked(step: Step | undefined): boolean {
  return step?.ask.kind === 'action' && (step.ask.done === 'absence-proved' || step.ask.done === 'meter-again');
}

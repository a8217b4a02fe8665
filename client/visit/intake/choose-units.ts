import type { Question } from '../../../grammar/visit/questions.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { isSameChoice, type UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { letGoUnanswered } from './questions.ts';

/** Of a number that was said while other units held. */
const OF_A_NUMBER: readonly Question['kind'][] = ['which-place', 'what-value', 'confirm-reading', 'teen-or-ty'];

/**
 * Other units from now on: told aloud, recorded, and never laid over what was said before. Readings keep their own
 * units; a number that is still asked about is said anew, so that nobody answers in one unit what was said in another.
 */
export function chooseUnits(turn: Turn, units: UnitChoice): void {
  const { context } = turn;
  if (context.visit === '' || isSameChoice(units, context.units)) return;
  for (let question = openQuestion(turn.context); isOfNumber(question); question = openQuestion(turn.context))
    letGoUnanswered(turn);
  turn.record({ type: 'units.chosen', units });
  turn.say('answer', SAY.units(units));
}

const isOfNumber = (question: Question | undefined): boolean =>
  question !== undefined && OF_A_NUMBER.includes(question.kind);

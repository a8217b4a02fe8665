import type { Meaning, ReadAt, Understanding } from '../../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { OpenQuestion } from '../../../grammar/visit/questions.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { isHeldBack } from '../steps/answers-caution.ts';
import { expectationOf } from '../steps/expectation.ts';
import { deadWords } from './answer-status.ts';

/**
 * Asks for the place of what was told without one, where all else was understood: of a value, or of a switch. Whether
 * it is dead is no word of a switch: what is measured is said instead. Returns whether there was something to ask.
 */
export function askPlace(turn: Turn, { meaning, reason, repaired }: Understanding): boolean {
  if (repaired !== undefined) return false;
  if (meaning.kind === 'value') {
    if (isHeldBack(turn.context)) turn.say('answer', SAY.cautionFirst);
    else askWhere(turn, meaning);
    return true;
  }
  if (reason !== 'no-place') return false;
  if (meaning.kind === 'report' && meaning.report.type === 'energy') {
    const { device, state } = meaning.report;
    if (state === 'open' || state === 'locked') turn.ask({ kind: 'which-switch', state, device }, SAY.whichSwitch);
    return state === 'open' || state === 'locked';
  }
  if (meaning.kind !== 'unclear') return false;
  if (meaning.state !== undefined) turn.ask({ kind: 'which-switch', state: meaning.state }, SAY.whichSwitch);
  else turn.say('answer', deadWords(turn.context));
  return true;
}

/** Asks where a value was read; the value is said, so that a misheard one is noticed. */
export function askWhere(turn: Turn, { value, unit }: Extract<Meaning, { kind: 'value' }>): void {
  const open = turn.context.questions[0];
  // No value waits behind a question to be asked for later, when nobody knows it any more.
  if (open !== undefined && open.question.kind !== 'which-place') {
    turn.say('question', askAnewWords(open));
    return;
  }
  if (open !== undefined) turn.endQuestion('withdrawn');
  turn.ask({ kind: 'which-place', value, ...(unit === undefined ? {} : { unit }) }, SAY.whichPlace(value, unit));
}

/** A place that was named alone: the number that comes next belongs to it, and to no step. */
export function askValue(turn: Turn, { reason, at, of }: Extract<Meaning, { kind: 'unclear' }>): void {
  if (reason !== 'no-value' || at === undefined) turn.say('question', SAY.unclear);
  else askFor(turn, of ?? [], SAY.valueAt(at));
}

/** Asks for the number of a place. Where the step asks for that very one, or a question stands, it is only said. */
export function askFor(turn: Turn, [first, ...others]: readonly ReadAt[], words: string): void {
  const { readings } = expectationOf(turn.context);
  const places = first === undefined ? [] : [first, ...others];
  const isExpected = readings.length === 1 && readings.every((one) => places.some((place) => isSame(place, one)));
  if (first === undefined || isExpected || openQuestion(turn.context) !== undefined) turn.say('question', words);
  else turn.ask({ kind: 'what-value', of: [first, ...others] }, words);
}

const isSame = (one: ReadAt, other: ReadAt): boolean => one.quantity === other.quantity && samePlaces(one.at, other.at);

/** The question that stands, where what was said answered nothing. */
export function askAnewWords({ question, words }: OpenQuestion): string {
  return question.kind === 'teen-or-ty' || question.kind === 'confirm-reading' ? SAY.answerFirst : words;
}

import type { Meaning, ReadAt, Understanding } from '../../../grammar/phrases/meaning.ts';
import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import type { VisitContext } from '../chart/context.ts';
import { QUESTION_MINUTES, type Turn } from '../chart/turn.ts';
import { handsToldBy } from '../rules/hands-told.ts';
import { shortAnswers } from '../steps/short-answers.ts';
import { lapseUnanswered } from './ask-still-off.ts';
import { countAsOpened, namesOpening } from './heed-circuit-told.ts';
import { notProvenDead, recordUnproven } from './tell-unproven.ts';

/** A question that nobody answered in its time is let go, and the talk goes on; what it was about does not count. */
export function letQuestionGo(turn: Turn): void {
  const { questions, put, now } = turn.context;
  if (questions[0] === undefined || put === undefined) return;
  // A timer of an earlier question is stale.
  if (questions[0].number !== put.number || now.mono - put.mono < QUESTION_MINUTES * MS_A_MINUTE) return;
  if (turn.context.waits) turn.startTimer('question', QUESTION_MINUTES);
  else letGoUnanswered(turn);
}

/** What is told or done next, whatever was asked before it. Talk about the question leaves it standing. */
const TELLING: readonly Meaning['kind'][] = [
  'reading',
  'several',
  'report',
  'nameplate',
  'part',
  'work',
  'wire',
  'dictated',
];
const GOES_ON: readonly CommandId[] = ['what-next', 'done', 'go-back', 'skip-to'];
/** Talk about the visit leaves the question whether it is still off: hands wait for its answer. */
const ASKS_ON: readonly CommandId[] = ['what-next', 'go-back', 'skip-to'];

/** Whether what was said makes sense without the question that stands: the technician has gone on. */
export function makesSenseWithout({ meaning, verdict }: Understanding, context: VisitContext): boolean {
  if (meaning.kind === 'command')
    return (
      verdict === 'logged' &&
      !(openQuestion(context)?.kind === 'still-off' && ASKS_ON.includes(meaning.command)) &&
      (GOES_ON.includes(meaning.command) ||
        goesOnLive(meaning.command, context) ||
        agreesOnArrival(meaning.command, context))
    );
  if (meaning.kind === 'report' && meaning.report.type === 'injury') return false;
  if (meaning.kind === 'unclear') return meaning.of !== undefined && !asksOf(openQuestion(context), meaning.of);
  return TELLING.includes(meaning.kind);
}

/** Whether a question asks of one of the places. */
function asksOf(question: Question | undefined, places: readonly ReadAt[]): boolean {
  if (question === undefined) return false;
  const asked = 'reading' in question ? [question.reading] : question.kind === 'what-value' ? question.of : [];
  return asked.some((one) => places.some((place) => samePlaces(place.at, one.at)));
}

/** A "yes" to what is asked of the customer or the job: no place is answered so. */
function agreesOnArrival(command: CommandId, context: VisitContext): boolean {
  const { step } = context;
  const kind = openQuestion(context)?.kind;
  if (command !== 'yes' || step?.source !== 'arrive' || (kind !== 'which-place' && kind !== 'what-value')) return false;
  return shortAnswers(step, context).yes !== undefined;
}

/** To a caution that waits: the step comes next, and its number would else be asked for its place. */
function goesOnLive(command: CommandId, context: VisitContext): boolean {
  const kind = openQuestion(context)?.kind;
  if (context.caution === undefined) return false;
  return command === 'live' || (command === 'got-it' && (kind === 'which-place' || kind === 'which-switch'));
}

/** The question that is put ends without its answer, aloud and in the record; the step is asked again. */
export function letGoUnanswered(turn: Turn): void {
  const question = openQuestion(turn.context);
  if (question === undefined) return;
  if (question.kind === 'confirm-reading' || question.kind === 'teen-or-ty') {
    turn.record({ type: 'reading.refused', reading: question.reading, reason: 'not-answered' });
  }
  // Nobody denied it: hands were there.
  const told = question.kind === 'confirm-meaning' ? handsToldBy(question.meaning, turn.context) : [];
  turn.endQuestion('expired');
  if (question.kind === 'still-off') return lapseUnanswered(turn);
  for (const { what, zones } of told) recordUnproven(turn, what, notProvenDead(turn, zones), 'alone');
  if (question.kind === 'confirm-meaning' && namesOpening(question.meaning))
    countAsOpened(turn, meaningWords(question.meaning) ?? '');
  turn.say('answer', SAY.leftOut(question));
  // Behind a caution the step is still to come, unless it was said in its breath.
  if (turn.context.caution === undefined || turn.context.caution.withStep) turn.repeatStep();
}

/** The technician leaves the question: what it asked of does not count. */
export function withdrawQuestion(turn: Turn): void {
  const question = openQuestion(turn.context);
  if (question === undefined) return;
  if (question.kind === 'confirm-reading' || question.kind === 'teen-or-ty') {
    turn.record({ type: 'reading.refused', reading: question.reading, reason: 'withdrawn-by-technician' });
  }
  turn.endQuestion('withdrawn');
  if (question.kind === 'still-off') return lapseUnanswered(turn);
  turn.say('answer', SAY.leftOut(question));
  turn.repeatStep();
}

/** All questions that stand open are withdrawn: the visit closes over them. */
export function withdrawQuestions(turn: Turn): void {
  while (turn.context.questions.length > 0) turn.endQuestion('withdrawn');
}

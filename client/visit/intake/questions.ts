import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { QUESTION_MINUTES, type Turn } from '../chart/turn.ts';

/** A question that nobody answered is let go, and the talk goes on; what it was about does not count. */
export function letQuestionGo(turn: Turn): void {
  const { questions, put, now } = turn.context;
  if (questions[0] === undefined || put === undefined) return;
  // A timer of an earlier question is stale.
  if (questions[0].number !== put.number || now.mono - put.mono < QUESTION_MINUTES * MS_A_MINUTE) return;
  endUnanswered(turn);
  turn.say('answer', SAY.letGo);
}

/** All questions that stand open are withdrawn: the visit closes over them. */
export function withdrawQuestions(turn: Turn): void {
  while (turn.context.questions.length > 0) turn.endQuestion('withdrawn');
}

function endUnanswered(turn: Turn): void {
  const question = turn.context.questions[0]?.question;
  if (question?.kind === 'confirm-reading' || question?.kind === 'teen-or-ty') {
    turn.record({ type: 'reading.refused', reading: question.reading, reason: 'not-answered' });
  }
  turn.endQuestion('expired');
}

import { ANSWER } from '../../words/talk/answer-words.ts';
import type { Turn } from '../chart/turn.ts';
import { cautionsFor } from '../rules/cautions-due.ts';

/**
 * "One second": nothing is asked until something else is said. What power, a proof or a charge calls for is said all
 * the same; over a live step it is said once that hands stay off.
 */
export function waitAMoment(turn: Turn): void {
  const { step, caution } = turn.context;
  turn.hush(false);
  turn.talk({ waits: true });
  const isCautioned = caution !== undefined && caution.zone !== 'none';
  if (isCautioned || (step !== undefined && cautionsFor(step).length > 0)) turn.say('warning', ANSWER.handsOff);
}

/** What was said ends the moment; what it was and no more asks the step again. */
export function endMoment(turn: Turn): void {
  if (turn.context.wasWaiting) turn.repeatStep();
}

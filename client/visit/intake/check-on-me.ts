import { CHECK_AGAIN_MINUTES } from '../../../grammar/visit/evolve.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';

/** The lone-worker check. It runs through a held visit, and ends with its cancelling, its answer when once, or the visit. */

/** After so many times without an answer it counts as unanswered. Our choice. */
export const TIMES_UNANSWERED = 3;

export function setCheck(turn: Turn, minutes: number, every: boolean): void {
  turn.record({ type: 'check.set', minutes, every });
  turn.startTimer('check', minutes);
  turn.say('readback', SAY.checkSet(minutes, every));
}

/** The timer ran out: the check is put, again and again until it is answered. A timer of an earlier check is stale. */
export function putCheck(turn: Turn): void {
  const { check, now } = turn.context;
  if (check === undefined || now.mono < check.due) return;
  const asked = check.asked + 1;
  turn.record({ type: 'check.asked', times: asked });
  if (asked >= TIMES_UNANSWERED) turn.record({ type: 'check.unanswered', times: asked });
  turn.startTimer('check', CHECK_AGAIN_MINUTES);
  turn.say('warning', asked === 1 ? SAY.check : asked < TIMES_UNANSWERED ? SAY.checkAgain : SAY.checkUnanswered);
}

/** "I am fine" answers a check that was put; said before, it begins the time anew. */
export function answerCheck(turn: Turn): void {
  const { check } = turn.context;
  if (check === undefined) {
    turn.say('answer', turn.context.hurt ? SAY.stillHurt : SAY.noCheck);
    return;
  }
  turn.record({ type: 'check.answered' });
  if (!check.every && check.asked > 0) {
    endCheck(turn);
    turn.say('readback', SAY.checkOver);
    return;
  }
  turn.startTimer('check', check.minutes);
  turn.say('readback', SAY.checkNext(check.minutes));
}

export function cancelCheck(turn: Turn): void {
  const running = turn.context.check !== undefined;
  endCheck(turn);
  turn.say('readback', running ? SAY.checkOver : SAY.noCheck);
}

export function endCheck(turn: Turn): void {
  if (turn.context.check === undefined) return;
  turn.record({ type: 'check.ended' });
}

/** After an injury a running check is put within a minute. */
export function hastenCheck(turn: Turn): void {
  if (turn.context.check === undefined) return;
  turn.record({ type: 'check.hastened' });
  turn.startTimer('check', CHECK_AGAIN_MINUTES);
}

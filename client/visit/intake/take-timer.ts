import { sayNumber } from '../../../grammar/phrases/numbers/say-number.ts';
import type { TimerId } from '../../../grammar/visit/inputs.ts';
import { minutesRunning } from '../choose-step.ts';
import { SPLIT_AFTER_MINUTES } from '../plans.ts';
import { SAY } from '../prompts.ts';
import type { Turn } from '../turn.ts';

const REMINDER_MINUTES = 5;

/** Time comes in as an input; what it brings about depends on where the visit stands. */
export function takeTimer(turn: Turn, timer: TimerId): void {
  const { runningSince, phase } = turn.context;
  if (timer !== 'split-reminder' || runningSince === undefined || phase !== 'prove') return;
  const minutes = minutesRunning(turn.context);
  if (minutes < SPLIT_AFTER_MINUTES) {
    turn.say('answer', SAY.splitSoon(sayNumber(Math.round(minutes))));
    turn.startTimer('split-reminder', REMINDER_MINUTES);
  }
}

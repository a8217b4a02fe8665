import { MS_A_MINUTE, type TimerId } from '../../../grammar/visit/inputs.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { SPLIT_CALL_MINUTES, type Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { minutesRunning } from '../steps/choose-step.ts';
import { SPLIT_AFTER_MINUTES } from '../steps/plans.ts';
import { putCheck } from './check-on-me.ts';
import { lapseProofs } from './end-proofs.ts';
import { letQuestionGo } from './questions.ts';
import { endStanding } from './take-refrigerant.ts';

/** After so many minutes without a word a proof is asked again (our rule). */
export const QUIET_MINUTES = 30;

/** Time comes in as an input; what it brings about depends on where the visit stands. */
export function takeTimer(turn: Turn, timer: TimerId): void {
  switch (timer) {
    case 'split-reminder':
      return remindOfSplit(turn);
    case 'refrigerant':
      return endStanding(turn);
    case 'check':
      return putCheck(turn);
    case 'question':
      return letQuestionGo(turn);
    case 'quiet':
      return endQuietProof(turn);
    case 'proof':
      // Whatever comes in looks at the age of the proof that is in progress.
      return;
    default:
      timer satisfies never;
  }
}

function remindOfSplit(turn: Turn): void {
  const { runningSince, phase } = turn.context;
  if (runningSince === undefined || phase !== 'prove') return;
  const minutes = minutesRunning(turn.context);
  if (minutes >= SPLIT_AFTER_MINUTES) return;
  turn.say('answer', SAY.splitSoon(Math.round(SPLIT_AFTER_MINUTES - minutes)));
  turn.startTimer('split-reminder', SPLIT_CALL_MINUTES);
}

/** A proof, begun or whole, that nobody has spoken over for half an hour lapses to what was reported: it is proved again. */
function endQuietProof(turn: Turn): void {
  const { energy, now, lastHeard } = turn.context;
  if (!ZONES.some((zone) => IN_PROOF.includes(energy[zone]))) return;
  const quiet = Math.max(0, now.mono - lastHeard) / MS_A_MINUTE;
  if (quiet < QUIET_MINUTES) {
    turn.startTimer('quiet', QUIET_MINUTES - quiet);
    return;
  }
  lapseProofs(turn, BECAUSE.quiet, SAY.quiet);
}

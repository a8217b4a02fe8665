import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { type EnergyState, ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { READ_DEAD } from '../rules/isolation.ts';
import { lapseProofs } from './end-proofs.ts';
import { endReached } from './heed-power.ts';

type StillOff = Extract<Question, { kind: 'still-off' }>;

/**
 * Something was said beside a proof, and nobody knows what: it may have told that power, a lock or a switch came back.
 * Hands wait until it is answered; without an answer the proof lapses.
 *
 * @returns whether that is asked now
 */
export function askStillOff(turn: Turn, heard: string): boolean {
  const { energy, questions } = turn.context;
  if (!ZONES.some((zone) => isHandsThere(energy[zone]))) return false;
  const why = BECAUSE.notUnderstood(heard);
  for (const zone of ZONES) turn.move(zone, 'asked', why);
  if (!questions.some(({ question }) => question.kind === 'still-off'))
    turn.ask({ kind: 'still-off', heard }, SAY.stillOff);
  return questions.length === 0;
}

/** Whether nothing at all is known of what was said: neither a number without its place nor a place without its number. */
export function isNotUnderstood({ verdict, meaning, reason, repaired }: Understanding): boolean {
  if (verdict !== 'rejected' || reason === 'other-unit') return false;
  if (meaning.kind === 'unclear') return meaning.at === undefined && meaning.state === undefined;
  return repaired !== undefined;
}

/** That nothing came back, said where nobody asked: nothing else is in it. */
const STILL_OFF =
  /^(?:(?:yes|yeah|yep|and|it|that|it is|it's|everything|power|the|my|disconnect|breaker|lock|tag) )*(?:is |are |'s )?still (?:off|locked|locked out|out|open|dead|on|there|tagged)$/;

export function saysStillOff(heard: string): boolean {
  const words = heard.toLowerCase().trim();
  return STILL_OFF.test(words) && (!/ on$| there$/.test(words) || /\b(?:lock|tag)\b/.test(words));
}

/** Yes, or that a switch is open or locked: the proof stands. Anything less than a yes ends it. */
export function answersStillOff(
  turn: Turn,
  question: StillOff,
  meaning: Meaning,
  take: (turn: Turn, meaning: Meaning) => void,
): boolean {
  if (meaning.kind === 'command' && meaning.command === 'no') {
    turn.endQuestion('answered');
    endReached(turn, ZONES, BECAUSE.maybeBack(question.heard), 'switch');
    return true;
  }
  const isYes = meaning.kind === 'command' && meaning.command === 'yes';
  if (!isYes && !saysOff(meaning)) return false;
  turn.endQuestion('answered');
  for (const zone of ZONES) turn.move(zone, 'still-off', BECAUSE.saidStillOff);
  if (meaning.kind === 'report') take(turn, meaning);
  else turn.say('answer', SAY.stillOffThen);
  turn.repeatStep();
  return true;
}

function saysOff(meaning: Meaning): boolean {
  if (meaning.kind === 'unclear') return meaning.state === 'open' || meaning.state === 'locked';
  if (meaning.kind !== 'report' || meaning.report.type !== 'energy') return false;
  return meaning.report.state === 'open' || meaning.report.state === 'locked';
}

/** The question whether it is still off was left unanswered: the proof lapses, aloud. */
export function lapseUnanswered(turn: Turn): void {
  if (ZONES.some((zone) => isHandsThere(turn.context.energy[zone])))
    lapseProofs(turn, BECAUSE.notSaidOff, SAY.notSaidOff);
  turn.repeatStep();
}

/** Read dead, or asked whether it still is: hands may be there, or soon. */
function isHandsThere(state: EnergyState): boolean {
  return READ_DEAD.includes(state) || state === 'in-doubt';
}

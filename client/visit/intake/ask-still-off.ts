import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import { saysOnlyZeros } from '../../../grammar/phrases/only-zeros.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { saysStillOff, takesBack } from '../../../grammar/vocabulary/still-off-signs.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { HANDS_MAY_BE } from '../rules/isolation.ts';
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
  if (!ZONES.some((zone) => HANDS_MAY_BE.includes(energy[zone]))) return false;
  const why = BECAUSE.notUnderstood(heard);
  for (const zone of ZONES) turn.move(zone, 'asked', why);
  if (!questions.some(({ question }) => question.kind === 'still-off'))
    turn.ask({ kind: 'still-off', heard }, SAY.stillOff);
  return questions.length === 0;
}

/** Whether nothing at all is known of what was said: neither a number without its place nor a place without its number. */
export function isNotUnderstood({ heard, verdict, meaning, reason, repaired }: Understanding): boolean {
  if (verdict !== 'rejected' || reason === 'other-unit' || saysOnlyZeros(heard)) return false;
  if (meaning.kind === 'unclear') return meaning.at === undefined && meaning.state === undefined;
  return repaired !== undefined;
}

/** That nothing came back, said where nobody asked: where a proof stands, it stands by its numbers and not by these words. */
export function heardStillOff(turn: Turn, heard: string): boolean {
  const { energy, questions } = turn.context;
  if (questions.length > 0 || !saysStillOff(heard)) return false;
  if (!ZONES.some((zone) => energy[zone] === 'proven-dead')) return false;
  turn.say('answer', SAY.proofStands);
  return true;
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
  turn.talk({ saidStillOff: true });
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

/** "Yes" to that it is still off, and "no" right behind it: the no counts. */
export function heedDenied(turn: Turn, { accepted, understanding: { heard } }: HeardUtterance): void {
  if (!accepted || !turn.context.saidStillOff) return;
  turn.talk({ saidStillOff: false });
  if (takesBack(heard)) endReached(turn, ZONES, BECAUSE.maybeBack(heard), 'switch');
}

/** The question whether it is still off was left unanswered: the proof lapses, aloud. */
export function lapseUnanswered(turn: Turn): void {
  if (ZONES.some((zone) => HANDS_MAY_BE.includes(turn.context.energy[zone])))
    lapseProofs(turn, BECAUSE.notSaidOff, SAY.notSaidOff);
  turn.repeatStep();
}

/** Whether it is still off is asked of a proof: where none stands any more, nothing is left to ask. */
export function leaveStillOff(turn: Turn): void {
  const { energy, questions } = turn.context;
  const asked = questions.find(({ question }) => question.kind === 'still-off');
  if (asked === undefined || ZONES.some((zone) => HANDS_MAY_BE.includes(energy[zone]))) return;
  turn.endQuestion('withdrawn', asked.number);
  turn.repeatStep();
}

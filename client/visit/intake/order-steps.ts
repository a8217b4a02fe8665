import { lackingToRun } from '../../../grammar/visit/refrigerant-work.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { isGrounded } from '../rules/after-trip.ts';
import { minutesToStand } from '../rules/refrigerant-plan.ts';
import { askWords, stepWords } from '../steps/ask-step.ts';
import {
  chooseGoal,
  chooseStep,
  isFresh,
  isSettled,
  minutesRunning,
  waitsForSplit,
  waitsToRun,
  wayLacking,
  wayLeft,
} from '../steps/choose-step.ts';
import { wayOf } from '../steps/given-up.ts';
import { holdBack } from '../steps/hold-back.ts';
import { PROVE_PLAN, SPLIT_AFTER_MINUTES } from '../steps/plans.ts';
import { nothingNextWords } from './nothing-next.ts';
import { goOnWithout } from './take-answer.ts';
import { passPlate } from './take-plate.ts';
import { restart } from './take-proof.ts';

/** What comes next, or what stands before it. */
export function sayNext(turn: Turn): void {
  const { context } = turn;
  if (context.held) return void turn.say('answer', SAY.held);
  if (context.caution !== undefined) return void turn.say('answer', SAY.cautionFirst);
  const step = context.step ?? chooseStep(context);
  // What is offered or repeated at the end of the turn is said then.
  const isSaidYet = context.step === undefined ? isOffered(turn) : context.repeatsStep;
  if (step !== undefined && isSaidYet && holdBack(step, context) !== 'proof') return;
  if (step !== undefined) sayStep(turn, step);
  else if (isGrounded(context)) turn.say('answer', SAY.groundedHolds);
  else if (minutesToStand(context) > 0)
    turn.say('answer', SAY_OF_REFRIGERANT.standsStill(Math.ceil(minutesToStand(context))));
  else if (waitsForSplit(context))
    turn.say('answer', SAY.runIn(Math.ceil(SPLIT_AFTER_MINUTES - minutesRunning(context))));
  else turn.say('answer', leftWords(context));
}

/** Whether a step may be put when the turn is over. */
const isOffered = ({ context: { questions, waits } }: Turn): boolean => questions.length === 0 && !waits;

/** What is left where nothing can be asked: a way that was given up, a repair that did not cure, or nothing. */
function leftWords(context: VisitContext): string {
  return stuckWords(context) ?? (isFresh(context) ? nothingNextWords(context) : SAY.nextIs);
}

/** Why nothing can be asked though something is left; undefined where nothing stands in the way. */
function stuckWords(context: VisitContext): string | undefined {
  const way = wayLeft(context);
  if (way !== undefined) return SAY.nothingWithout(askWords(way, context));
  const lacks = lackingToRun(context);
  const wantsToRun = context.phase === 'prove' || context.phase === 'testing';
  if (lacks !== undefined && wantsToRun) return SAY_OF_REFRIGERANT.notRun(lacks);
  if (!waitsToRun(context)) return undefined;
  const leading = context.assessment?.suspects[0]?.fault;
  return SAY.notCured(leading === 'nothing-wrong' || leading === 'something-else' ? undefined : leading);
}

/** Where all that is left wants what was given up, or a unit that does not run, that is told once. */
export function tellStuck(turn: Turn): void {
  const { context } = turn;
  const { questions, held, waits, toldStuck } = context;
  if (questions.length > 0 || held || waits || !isFresh(context)) return;
  const words = chooseStep(context) === undefined ? stuckWords(context) : undefined;
  if (words === toldStuck) return;
  turn.talk({ toldStuck: words });
  if (words !== undefined) turn.say('answer', words);
}

/** A step again, or what stands before it: no interlock is got round by asking what comes next. */
function sayStep(turn: Turn, step: Step): void {
  switch (holdBack(step, turn.context)) {
    case 'proof':
      turn.say('warning', SAY.notProvenDead);
      return;
    case 'supervisor':
      turn.say('warning', SAY.supervisorFirst);
      return;
    case 'caution':
      // Its caution is spoken once the open question is answered.
      turn.say('answer', SAY.questionOpen);
      return;
    default:
      turn.say('step', stepWords(step, turn.context));
  }
}

/**
 * A step set aside by the technician comes back only when asked for; another takes its place. Who passes what power
 * must be brought to has passed what wanted it so: otherwise the same switch would be asked for ever.
 */
export function park(turn: Turn, why: string): void {
  const { step, proof } = turn.context;
  if (step === undefined) return sayNext(turn);
  if (step.plate !== undefined) return passPlate(turn, why);
  if (step.id.startsWith('energy.source')) {
    turn.record({ type: 'step.parked', step: step.id, why, words: askWords(step, turn.context) });
    turn.say('answer', SAY.parked(askWords(step, turn.context)));
    turn.raise({ type: 'step.answered' });
    return;
  }
  if (proof !== undefined && step.source === 'energy') restart(turn, proof.zone, why);
  const isClamps = step.ask.kind === 'action' && step.ask.done === 'clamps-placed';
  const forPower = step.source === 'energy' && !isClamps;
  const passed = (forPower ? chooseGoal(turn.context) : undefined) ?? step;
  const { id, test } = passed;
  const words = askWords(passed, turn.context);
  turn.record({ type: 'step.parked', step: id, why, words, ...(test === undefined ? {} : { test }) });
  turn.say('answer', SAY.parked(askWords(step, turn.context)));
  giveUp(turn, step, why);
  goOnWithout(turn, step);
  turn.raise({ type: 'step.answered' });
}

/** A way that is given up is not asked again; what wanted it after the repair is passed with it. */
function giveUp(turn: Turn, step: Step, why: string): void {
  const way = wayOf(step);
  if (way === undefined) return;
  if (turn.context.settled.includes(way)) turn.record({ type: 'steps.reopened', steps: [way] });
  turn.record({ type: 'step.parked', step: way, why, words: askWords(step, turn.context) });
  if (turn.context.phase === 'prove') {
    for (const one of PROVE_PLAN.filter((step) => !isSettled(step, turn.context) && wayLacking(step, turn.context)))
      turn.record({ type: 'step.parked', step: one.id, why, words: askWords(one, turn.context) });
  }
}

import type { RankedTest } from '../../../grammar/visit/inputs.ts';
import type { Focus } from '../../../grammar/vocabulary/focuses.ts';
import { ANSWER } from '../../words/talk/answer-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { isOpened } from '../rules/isolation.ts';
import { askWords } from '../steps/ask-step.ts';
import { startsOpenCircuit, undoes } from '../steps/choose-step.ts';
import { pressingStep } from '../steps/dead-steps.ts';
import { testStep } from '../steps/plans.ts';
import { stepsOf } from '../steps/wanted-steps.ts';
import { takeBack } from './take-correction.ts';

/** The steps that come next are of a part of the unit that the technician named, where nothing stands in their way. */
export function skipTo(turn: Turn, focus: Focus): void {
  const { context } = turn;
  const steps = stepsOf(focus, context);
  const [first] = steps;
  const why = first === undefined ? ANSWER.inTheWay.nothingLeft(focus) : inTheWay(first, context);
  if (why !== undefined) {
    turn.say('answer', why);
    turn.repeatStep();
    return;
  }
  turn.say('answer', ANSWER.goesTo(focus));
  want(turn, steps);
}

/**
 * A test that somebody goes to of their own choice comes next: guarded like any other, and behind the power and the call
 * that it wants back.
 */
export function goToTest(turn: Turn, test: RankedTest): void {
  const step = testStep(test);
  if (holdsUp(step, turn.context) === undefined) want(turn, [step], true);
}

/**
 * The step that was asked before this one is asked anew. What was told of power, locks and charge is never undone by
 * that; a number of a proof that is in progress is taken back, and its pair is read again.
 */
export function goBack(turn: Turn): void {
  const { step, asked } = turn.context;
  const before = asked.at(-1)?.id === step?.id ? asked.slice(0, -1) : asked;
  const target = before.at(-1);
  if (target === undefined) return void turn.say('answer', ANSWER.nothingBefore);
  if (target.source === 'energy') return backInProof(turn, target);
  if (target.ask.kind === 'action') return askedBefore(turn, target, before);
  const why = inTheWay(target, turn.context);
  if (why !== undefined) {
    turn.say('answer', why);
    turn.repeatStep();
    return;
  }
  turn.talk({ asked: before.slice(0, -1) });
  want(turn, [target]);
}

/** What was asked to be done or told is said again; of a line of the plate that is read, how it is set right. */
function askedBefore(turn: Turn, target: Step, before: readonly Step[]): void {
  const words = askWords(target, turn.context);
  turn.talk({ asked: before.slice(0, -1) });
  if (words !== '') return void turn.say('step', words);
  turn.say('answer', ANSWER.staysTold);
  turn.repeatStep();
}

/** The last number of a proof, if that is what was said last; anything else of power stands as it was told. */
function backInProof(turn: Turn, { ask }: Step): void {
  const { proof, undoable, readings } = turn.context;
  const last = undoable.at(-1);
  const line = last?.kind === 'reading' ? readings.find(({ number }) => number === last.number) : undefined;
  const isLast =
    proof !== undefined && ask.kind === 'reading' && line !== undefined && line.reading.at.join() === ask.at.join();
  if (isLast) return takeBack(turn);
  turn.say('answer', ask.kind === 'reading' ? ANSWER.readAnew : ANSWER.staysTold);
  turn.repeatStep();
}

function want(turn: Turn, steps: readonly Step[], bringsBack = false): void {
  const { readingCount, parked } = turn.context;
  turn.talk({ wanted: { steps, since: readingCount, parkedBefore: parked.length, bringsBack } });
  turn.raise({ type: 'step.set-aside' });
}

/** What stands in the way of a step now, in words; undefined where nothing does. */
function inTheWay(step: Step, context: VisitContext): string | undefined {
  const held = holdsUp(step, context);
  if (held !== undefined) return held;
  const { needs, zone } = step;
  if (!undoes(step, context)) return undefined;
  const own = zone === 'none' ? 'outdoor-load' : zone;
  return needs.power === 'on' && isOpened(own, context) ? ANSWER.inTheWay.power(own) : ANSWER.inTheWay.call;
}

/** What no switch of the technician's takes away. */
function holdsUp({ needs, source }: Step, context: VisitContext): string | undefined {
  const { phase, proof, search, gate } = context;
  if (context.held) return SAY.held;
  if (proof !== undefined) return ANSWER.inTheWay.proof;
  if (search !== undefined || pressingStep(context) !== undefined) return ANSWER.inTheWay.search;
  if (phase === 'repair') return ANSWER.inTheWay.repair;
  if (phase === 'close' && source !== 'close') return ANSWER.inTheWay.close;
  if (gate !== undefined) return ANSWER.inTheWay.gate;
  return startsOpenCircuit(needs, context) ? ANSWER.inTheWay.opened : undefined;
}

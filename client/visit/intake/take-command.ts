import type { Correction } from '../../../grammar/phrases/meaning.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import type { Step } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { isGrounded } from '../rules/after-trip.ts';
import { waitsOut } from '../rules/charged-sections.ts';
import { minutesToStand } from '../rules/refrigerant-plan.ts';
import { askWords, stepWords } from '../steps/ask-step.ts';
import { chooseGoal, chooseStep, isFresh, minutesRunning, waitsForSplit } from '../steps/choose-step.ts';
import { holdBack } from '../steps/hold-back.ts';
import { SPLIT_AFTER_MINUTES } from '../steps/plans.ts';
import { statusWords, whyWords } from './answer-status.ts';
import { answerCheck, cancelCheck } from './check-on-me.ts';
import { closeVisit } from './close-visit.ts';
import { takeTimePassed } from './follow-charge.ts';
import { goOnWithout } from './take-answer.ts';
import { rejectQuestioned, takeBack, takeCorrection } from './take-correction.ts';
import { passPlate } from './take-plate.ts';
import { restart } from './take-proof.ts';
import { takeReading } from './take-reading.ts';
import { takeObservation } from './take-report.ts';

/** An order to Readback itself, by voice, touch or key. */
export function takeCommand(turn: Turn, command: CommandId, correction?: Correction): void {
  switch (command) {
    case 'take-back':
      return takeBack(turn);
    case 'correct':
      return takeCorrection(turn, correction ?? {});
    case 'yes':
    case 'no':
      return answerQuestion(turn, command === 'yes');
    case 'live':
    case 'got-it':
      turn.raise({ type: 'caution.acknowledged' });
      return;
    case 'here':
    case 'same-place':
      // It answers the question of a place, and nothing else.
      turn.say('question', SAY.unclear);
      return;
    case 'done':
      return takeDone(turn);
    case 'say-again':
      return sayAgain(turn);
    case 'what-next':
      return sayNext(turn);
    case 'why':
      turn.say('answer', whyWords(turn.context));
      return;
    case 'pass':
    case 'cannot-reach':
      return park(turn, command === 'pass' ? BECAUSE.passed : BECAUSE.cannotReach);
    case 'status':
      turn.say('answer', statusWords(turn.context));
      return;
    case 'hold':
      turn.raise({ type: 'hold' });
      turn.say('answer', SAY.held);
      return;
    case 'go-on':
      return goOn(turn);
    case 'short-talk':
      return setPace(turn, 'brief');
    case 'full-talk':
      return setPace(turn, 'full');
    case 'fine':
      return answerCheck(turn);
    case 'cancel-check':
      return cancelCheck(turn);
    case 'stop':
      turn.hush(true);
      return;
    case 'finish':
      return closeVisit(turn);
    case 'help':
      turn.say('answer', SAY.help);
      return;
    default:
      command satisfies never;
  }
}

/**
 * What was said last, whole; after a silence all that it cut and dropped, in its order. A caution that was cut is
 * spoken anew as a caution.
 */
function sayAgain(turn: Turn): void {
  const { caution, lastPrompt, silenced } = turn.context;
  const dropped = silenced.some(({ id }) => id === lastPrompt?.id) ? silenced : [];
  const isCautionDue = caution !== undefined && !caution.isSpoken;
  for (const { kind, text } of dropped) if (!(isCautionDue && kind === 'caution')) turn.say(kind, text);
  if (isCautionDue) turn.raise({ type: 'caution.again' });
  else if (dropped.length === 0) turn.say('answer', lastPrompt?.text ?? SAY.help);
}

/** Short or full talk; the same once more is answered, and changes nothing. */
function setPace(turn: Turn, pace: 'brief' | 'full'): void {
  if (turn.context.pace !== pace) turn.record({ type: 'talk.changed', pace });
  turn.say('answer', pace === 'brief' ? SAY.brief : SAY.full);
}

/** "Yes" takes the questioned reading as it stands; "no" sets it aside. */
function answerQuestion(turn: Turn, yes: boolean): void {
  const question = openQuestion(turn.context);
  if (question === undefined) {
    if (yes && turn.context.caution !== undefined) turn.raise({ type: 'caution.acknowledged' });
    return;
  }
  if (!yes && 'reading' in question) return rejectQuestioned(turn, question.reading);
  if (question.kind !== 'confirm-reading') {
    turn.say('question', yesIsNotEnough(question));
    return;
  }
  turn.endQuestion('answered');
  takeReading(turn, question.reading, 'confirmed');
}

/** Takes a held visit up; "go ahead" to a caution acknowledges it. */
function goOn(turn: Turn): void {
  if (!turn.context.held && turn.context.caution !== undefined) {
    turn.raise({ type: 'caution.acknowledged' });
    return;
  }
  turn.say('answer', SAY.resumed);
  turn.raise({ type: 'go.on' });
}

function yesIsNotEnough(question: Question): string {
  switch (question.kind) {
    case 'teen-or-ty':
      return SAY.digitsPlease;
    case 'which-place':
      return SAY.whichPlace(question.value, question.unit);
    case 'which-switch':
      return SAY.whichSwitch;
    default:
      return SAY.reasonWanted;
  }
}

/** "Done" acknowledges a caution that stands, and no more; else it answers a pull on the wires, clamps put on, or that a time has passed. */
function takeDone(turn: Turn): void {
  const { step, caution } = turn.context;
  if (caution !== undefined) {
    turn.raise({ type: 'caution.acknowledged' });
    return;
  }
  const done = step?.ask.kind === 'action' ? step.ask.done : undefined;
  if (done === 'tug-tested') {
    turn.record({ type: 'steps.settled', steps: ['repair.tug-tested'] });
    turn.say('readback', SAY.wiresPulled);
    return;
  }
  // The clamps are asked for together with the covers.
  if (done === 'clamps-placed') return takeObservation(turn, 'covers-on');
  if (isLeftForItsTime(turn)) takeTimePassed(turn, 'air-handler');
}

/** Whether "done" can mean that the time of an electronic drive has passed: asked for, or told of with nothing else put. */
function isLeftForItsTime({ context }: Turn): boolean {
  return context.energy['air-handler'] === 'reads-dead' && waitsOut('air-handler', context);
}

function sayNext(turn: Turn): void {
  const { context } = turn;
  if (context.held) return void turn.say('answer', SAY.held);
  if (context.caution !== undefined) return void turn.say('answer', SAY.cautionFirst);
  const step = context.step ?? chooseStep(context);
  if (step !== undefined) sayStep(turn, step);
  else if (isGrounded(context)) turn.say('answer', SAY.groundedHolds);
  else if (minutesToStand(context) > 0)
    turn.say('answer', SAY_OF_REFRIGERANT.standsStill(Math.ceil(minutesToStand(context))));
  else if (waitsForSplit(context))
    turn.say('answer', SAY.runIn(Math.ceil(SPLIT_AFTER_MINUTES - minutesRunning(context))));
  else turn.say('answer', isFresh(context) ? SAY.nothingNext : SAY.nextIs);
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
function park(turn: Turn, why: string): void {
  const { step, proof } = turn.context;
  if (step === undefined) return;
  if (step.plate !== undefined) return passPlate(turn, why);
  if (step.id.startsWith('energy.source')) {
    turn.record({ type: 'step.parked', step: step.id, why });
    turn.say('answer', SAY.parked(askWords(step, turn.context)));
    turn.raise({ type: 'step.answered' });
    return;
  }
  if (proof !== undefined && step.source === 'energy') restart(turn, proof.zone, why);
  const isClamps = step.ask.kind === 'action' && step.ask.done === 'clamps-placed';
  const forPower = step.source === 'energy' && !isClamps;
  const { id, test } = (forPower ? chooseGoal(turn.context) : undefined) ?? step;
  turn.record({ type: 'step.parked', step: id, why, ...(test === undefined ? {} : { test }) });
  turn.say('answer', SAY.parked(askWords(step, turn.context)));
  goOnWithout(turn, step);
  turn.raise({ type: 'step.answered' });
}

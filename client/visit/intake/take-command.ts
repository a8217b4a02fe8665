import type { OrderDetails } from '../../../grammar/phrases/meaning.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Step } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { waitsOut } from '../rules/charged-sections.ts';
import { shortAnswers } from '../steps/short-answers.ts';
import { answerTo } from './answer-asked.ts';
import { answersInAWord } from './answer-in-a-word.ts';
import { statusWords, whyWords } from './answer-status.ts';
import { askAnewWords } from './ask-where.ts';
import { answerCheck, cancelCheck } from './check-on-me.ts';
import { closeVisit } from './close-visit.ts';
import { takeTimePassed } from './follow-charge.ts';
import { goBack, skipTo } from './go-elsewhere.ts';
import { acknowledgeLate, lateBeingGiven, sayLateAgain } from './late-cautions.ts';
import { park, sayNext } from './order-steps.ts';
import { rejectQuestioned, takeBack, takeCorrection } from './take-correction.ts';
import { passPlateLine } from './take-plate.ts';
import { takeReading } from './take-reading.ts';
import { endMoment, waitAMoment } from './wait-a-moment.ts';

/** Orders that lead to another step. */
const LEADS_ON: readonly CommandId[] = ['what-next', 'go-back', 'skip-to'];

/** An order to Readback itself, by voice, touch or key. */
export function takeCommand(turn: Turn, command: CommandId, details: OrderDetails = {}): void {
  const [asked] = turn.context.questions;
  // Hands wait for its answer, and so does the next step.
  if (asked?.question.kind === 'still-off' && LEADS_ON.includes(command))
    return void turn.say('question', askAnewWords(asked));
  switch (command) {
    case 'take-back':
      return takeBack(turn);
    case 'correct':
      return takeCorrection(turn, details.correction ?? {});
    case 'yes':
    case 'no':
      if (!answersInAWord(turn, command)) answerQuestion(turn, command === 'yes');
      return;
    case 'live':
    case 'got-it':
      return takeAcknowledged(turn);
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
    case 'unsure':
      return beUnsure(turn);
    case 'status':
      turn.say('answer', statusWords(turn.context));
      return;
    case 'what-heard':
    case 'recall':
    case 'where-probes':
    case 'what-expected':
    case 'what-means':
    case 'suspects':
    case 'what-left':
    case 'is-it-dead':
      turn.say('answer', answerTo(command, turn.context, details));
      return;
    case 'go-back':
      return goBack(turn);
    case 'skip-to':
      return skipTo(turn, details.focus ?? 'refrigerant');
    case 'hold':
      if (details.moment === true) return waitAMoment(turn);
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
      turn.say('answer', helpWords(turn.context));
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
  for (const { kind, text } of dropped) {
    if (kind === 'caution' && (sayLateAgain(turn, text) || isCautionDue)) continue;
    turn.say(kind, text);
  }
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

/** Who does not know how is told where it is done; what can be left is passed by. Energy is never passed so. */
function beUnsure(turn: Turn): void {
  const { step, caution } = turn.context;
  if (step?.plate !== undefined) return passPlateLine(turn);
  if (step === undefined || caution !== undefined || step.source === 'energy' || step.ask.kind === 'reading') {
    turn.say('answer', answerTo('where-probes', turn.context));
    return;
  }
  park(turn, BECAUSE.passed);
}

/** It acknowledges a caution, and answers neither a question nor what is asked of the customer or the job: those are put again. */
function takeAcknowledged(turn: Turn): void {
  const { step, caution, questions } = turn.context;
  endMoment(turn);
  if (caution !== undefined) return turn.raise({ type: 'caution.acknowledged' });
  if (lateBeingGiven(turn.context).length > 0 || acknowledgeLate(turn)) return;
  // Who was asked for a number is going to read it.
  if (questions[0]?.question.kind === 'what-value') return;
  if (questions[0] !== undefined) turn.say('question', askAnewWords(questions[0]));
  else if (step?.ask.kind === 'action' && (step.source === 'arrive' || step.source === 'close')) turn.repeatStep();
}

/** In a proof and at a discharge: the form in which their numbers are said. */
function helpWords({ step, proof }: Turn['context']): string {
  const done = step?.ask.kind === 'action' ? step.ask.done : undefined;
  if (proof !== undefined || done === 'absence-proved' || done === 'meter-again') return SAY.helpInProof;
  return done === 'capacitors-discharged' ? SAY.helpAtCharge : SAY.help;
}

/** Takes a held visit up; "go ahead" to a caution acknowledges it. */
function goOn(turn: Turn): void {
  if (!turn.context.held && turn.context.caution !== undefined) {
    turn.raise({ type: 'caution.acknowledged' });
    return;
  }
  if (!turn.context.held && turn.context.wasWaiting) return endMoment(turn);
  if (!turn.context.held && turn.context.step !== undefined) return turn.repeatStep();
  turn.say('answer', SAY.resumed);
  turn.raise({ type: 'go.on' });
}

function yesIsNotEnough(question: Question): string {
  switch (question.kind) {
    case 'teen-or-ty':
      return SAY.digitsPlease;
    case 'which-place':
      return SAY.whichPlace(question.value, question.unit);
    case 'what-value':
      return SAY.valueAt(question.of[0].at);
    case 'which-switch':
      return SAY.whichSwitch;
    case 'still-off':
      return SAY.stillOff;
    default:
      return SAY.reasonWanted;
  }
}

/**
 * "Done" acknowledges a caution that stands, and answers what was asked in its breath where that is something to do;
 * else it answers what was asked, or that a time has passed.
 */
function takeDone(turn: Turn): void {
  const { step, caution } = turn.context;
  if (caution !== undefined) {
    turn.raise({ type: 'caution.acknowledged' });
    if (step !== undefined && caution.isSpoken && caution.withStep) takeAsDone(turn, step);
    return;
  }
  const done = step?.ask.kind === 'action' ? step.ask.done : undefined;
  if (done === 'tug-tested') {
    turn.record({ type: 'steps.settled', steps: ['repair.tug-tested'] });
    turn.say('readback', SAY.wiresPulled);
    return;
  }
  if (isLeftForItsTime(turn)) takeTimePassed(turn, 'air-handler');
  else if (!answersInAWord(turn, 'done')) turn.repeatStep();
}

/** What was asked behind a caution is done, where "done" tells of more than an order. */
function takeAsDone(turn: Turn, step: Step): void {
  const means = step.ask.kind === 'action' ? shortAnswers(step, turn.context).done : undefined;
  if (means !== undefined && means.kind !== 'command') turn.raise({ type: 'meanings.left', meanings: [means] });
}

/** Whether "done" can mean that the time of an electronic drive has passed: asked for, or told of with nothing else put. */
function isLeftForItsTime({ context }: Turn): boolean {
  return context.energy['air-handler'] === 'reads-dead' && waitsOut('air-handler', context);
}

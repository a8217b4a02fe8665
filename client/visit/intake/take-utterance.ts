import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import { hazardAboutTold } from '../../../grammar/vocabulary/danger-signs.ts';
import { deniedOfSwitch } from '../../../grammar/vocabulary/denial-signs.ts';
import { HAND_SIGNS, zonesOfHands } from '../../../grammar/vocabulary/hand-signs.ts';
import { inBaseUnit } from '../../../grammar/vocabulary/in-base-unit.ts';
import type { Value } from '../../../grammar/vocabulary/quantities.ts';
import { speltOut } from '../../../grammar/vocabulary/spelt-out.ts';
import { deniesInjury } from '../../../grammar/vocabulary/trouble-signs.ts';
import { bareUnit } from '../../../grammar/vocabulary/unit-choice.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import { quoteWords } from '../../words/things/quote-words.ts';
import type { Step } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { handsAtDeed } from '../rules/hands-at.ts';
import { handsToldBy } from '../rules/hands-told.ts';
import { isBeyondReason } from '../rules/is-beyond-reason.ts';
import { provedWith, READ_DEAD } from '../rules/isolation.ts';
import { powerMayBeBack, tellsOfPower } from '../rules/power-may-be-back.ts';
import { answersCaution, isHeldBack } from '../steps/answers-caution.ts';
import { expectationOf } from '../steps/expectation.ts';
import { zoneOf } from '../steps/plans.ts';
import { answersQuestion } from './answer-question.ts';
import { askStillOff, heardStillOff, isNotUnderstood, leaveStillOff } from './ask-still-off.ts';
import { askAnewWords, askFor, askPlace, askValue, askWhere } from './ask-where.ts';
import { setCheck } from './check-on-me.ts';
import { heedGround } from './heed-return.ts';
import { heedNumberGuessed, heedVoltageTold } from './heed-voltage-told.ts';
import { letGoUnanswered, makesSenseWithout } from './questions.ts';
import { readOffPlate } from './read-off-plate.ts';
import { isAnswered } from './settle-turn.ts';
import { takeCommand } from './take-command.ts';
import { takeContinued } from './take-continued.ts';
import { warnBeforeAsking } from './take-deed.ts';
import { takeDictated, takeFreeAnswer, takeNote } from './take-dictation.ts';
import { takeDoneWork } from './take-done-work.ts';
import { passPlateLine } from './take-plate.ts';
import { warnOfVoltageInProof } from './take-proof.ts';
import { actsAtOnce, askTwin, type Confirmed, followEnergy, isPresent, takeReading } from './take-reading.ts';
import { heedTestLimit } from './take-refrigerant.ts';
import { takeReport, warnOfLook, warnOfSeen } from './take-report.ts';
import { takeNameplate, takePart, takeWire } from './take-work.ts';
import { notProvenDead, recordUnproven, sayUnproven, tellUnproven } from './tell-unproven.ts';

/** Takes what was heard. Nothing that was not accepted, or not understood, moves the visit; it is asked again. */
export function takeUtterance(turn: Turn, utterance: HeardUtterance): void {
  const { understanding } = utterance;
  if (takeContinued(turn, utterance)) return;
  if (!utterance.accepted) return askAnew(turn, understanding);
  leaveStillOff(turn);
  if (isInjury(understanding.meaning) && deniesInjury(understanding.heard)) return askAnew(turn, understanding);
  if (understanding.verdict !== 'logged' && heardStillOff(turn, understanding.heard)) return;
  if (understanding.verdict === 'rejected') return takeUnknown(turn, utterance);
  if (turn.context.questions.length > 0 && answersQuestion(turn, understanding, takeMeaning)) return;
  if (makesSenseWithout(understanding, turn.context)) letGoUnanswered(turn);
  const plated = readOffPlate(turn, understanding.meaning);
  if (plated !== undefined) return askBack(turn, { ...understanding, meaning: plated, reason: 'several-places-fit' });
  if (understanding.verdict === 'asked' && !isUrgent(turn, understanding)) {
    warnOfVoltage(turn, understanding.meaning);
    warnOfHands(turn, understanding.meaning);
    if (understanding.meaning.kind === 'unclear') warnOfWords(turn, understanding.heard);
    else warnOfBypass(turn, understanding.heard);
    if (WITHOUT_VALUE.includes(understanding.meaning.kind)) heedVoltageTold(turn, understanding);
    heedNumberGuessed(turn, understanding);
    return askBack(turn, understanding);
  }
  if (answersCaution(turn.context, understanding.meaning)) {
    // The answer to a step acknowledges the caution that was spoken in its breath: the step comes first, then its answer.
    turn.raise({ type: 'caution.acknowledged' });
    turn.raise({ type: 'meanings.left', meanings: [understanding.meaning] });
    return;
  }
  takeMeaning(turn, understanding.meaning);
  if (isUnheard(turn, understanding.meaning) || isBesideStep(turn, understanding.meaning)) turn.repeatStep();
}

/** Words that were not understood: what they can mean all the same is warned of, and what is not known is asked. */
function takeUnknown(turn: Turn, utterance: HeardUtterance): void {
  const { understanding } = utterance;
  const { heard } = understanding;
  warnOfWords(turn, heard);
  heedVoltageTold(turn, understanding);
  const denied = deniedOfSwitch(heard);
  if (denied !== undefined) return tellDenied(turn, denied);
  if (turn.context.questions.length === 0 && tellsOfPower(heard))
    return turn.ask({ kind: 'which-switch', state: 'closed' }, SAY.whichSwitch);
  const isOfPower = powerMayBeBack(utterance, turn.context).length > 0;
  if (!isOfPower && takeFreeAnswer(turn, heard)) return;
  if (!isOfPower && isNotUnderstood(understanding) && askStillOff(turn, heard)) return;
  // Whoever is told to stay clear is not asked to say a number again.
  if (!hazardAboutTold(heard)) askAnew(turn, understanding);
}

/** Asks once more what stands open, or for what was said. */
function askAnew(turn: Turn, understanding: Understanding): void {
  const [open] = turn.context.questions;
  if (open !== undefined && !isOtherValue(turn, understanding)) turn.say('question', askAnewWords(open));
  else if (!askPlace(turn, understanding)) turn.say('question', notTakenWords(understanding));
}

/**
 * Whether something else was told than what is asked: the step is then asked again, so that the next number has its
 * place. Not in the repair, where the hands are busy and much is told, nor over something to do with them.
 */
function isBesideStep({ context, effects }: Turn, meaning: Meaning): boolean {
  const { step, caution, phase } = context;
  if (step === undefined || step.source === 'energy' || caution !== undefined || phase === 'repair') return false;
  if (isAnswered(step, context)) return false;
  const isOfHands = step.ask.kind === 'action' && step.source !== 'arrive' && step.source !== 'close';
  // A warning or a question of this turn is the last word.
  const waits = effects.some(
    ({ type, params }) => type === 'say' && (params.prompt.kind === 'warning' || params.prompt.kind === 'question'),
  );
  return !isOfHands && !waits && isOther(meaning);
}

/** What answers nothing here is not met with silence. */
function isUnheard({ context, effects, raised }: Turn, meaning: Meaning): boolean {
  const isNo = meaning.kind === 'command' && meaning.command === 'no';
  const isUnreadable =
    meaning.kind === 'report' && meaning.report.type === 'job-item' && meaning.report.item === 'plate-line-unreadable';
  return (isNo || isUnreadable) && context.caution === undefined && raised.length === 0 && !effects.some(isSaid);
}

const isSaid = ({ type }: Turn['effects'][number]): boolean => type === 'say';

/** A reading, a look, a line of the plate; not a switch or a proof, which have an order of their own. */
function isOther(meaning: Meaning): boolean {
  if (meaning.kind === 'several') return meaning.parts.every(isOther);
  if (meaning.kind === 'report') return meaning.report.type === 'observation' || meaning.report.type === 'job-item';
  return meaning.kind === 'reading' || meaning.kind === 'nameplate';
}

/** What was asked of these has no value that was warned of by itself. */
const WITHOUT_VALUE: readonly Meaning['kind'][] = ['command', 'unclear', 'value'];

/** A key: it answers the question that stands as its word would. */
export function takeTouched(turn: Turn, command: CommandId): void {
  const touched: Understanding = {
    heard: '',
    verdict: 'logged',
    meaning: { kind: 'command', command },
    confidence: 1,
  };
  if (answersQuestion(turn, touched, takeMeaning)) return;
  if (makesSenseWithout(touched, turn.context)) letGoUnanswered(turn);
  takeCommand(turn, command);
}

/**
 * One meaning after another: the regions settle what the first brought about before the next is judged.
 * @param readings whether their values were read back already and said to be so
 */
export function takeMeanings(turn: Turn, meanings: readonly Meaning[], readings: Confirmed = 'as heard'): void {
  const [first, ...left] = meanings;
  if (first === undefined) return;
  takeMeaning(turn, first, false, readings);
  const others = left.filter((one) => !isSameDischarge(one, first));
  if (others.length > 0) turn.raise({ type: 'meanings.left', meanings: others, readings });
}

/** Both sections of a unit in one breath: what is to be read now is said once. */
function isSameDischarge(one: Meaning, first: Meaning): boolean {
  if (one.kind !== 'report' || first.kind !== 'report') return false;
  if (one.report.type !== 'discharged' || first.report.type !== 'discharged') return false;
  return provedWith(one.report.zone) === provedWith(first.report.zone);
}

function takeMeaning(turn: Turn, meaning: Meaning, confirmed = false, readings: Confirmed = 'as heard'): void {
  switch (meaning.kind) {
    case 'reading':
      return takeReading(turn, meaning.reading, readings);
    case 'value':
      return takeBareValue(turn, meaning);
    case 'several':
      return takeMeanings(turn, meaning.parts, readings);
    case 'command':
      return takeCommand(turn, meaning.command, meaning);
    case 'report':
      return takeReport(turn, meaning.report);
    case 'nameplate':
      return takeNameplate(turn, meaning);
    case 'part':
      return takePart(turn, meaning, confirmed);
    case 'work':
      return takeDoneWork(turn, meaning);
    case 'wire':
      return takeWire(turn, meaning, confirmed);
    case 'check-on-me':
      return setCheck(turn, meaning.minutes, meaning.every);
    case 'dictated':
      return takeDictated(turn, meaning.as, meaning.text);
    case 'note':
      return takeNote(turn, meaning.text);
    case 'unclear':
      return askValue(turn, meaning);
    default:
      meaning satisfies never;
  }
}

/** A bare value that the matcher could not bind: asked for its place, never guessed. */
function takeBareValue(turn: Turn, meaning: Extract<Meaning, { kind: 'value' }>): void {
  const expected = expectationOf(turn.context).readings;
  const only = expected.length === 1 ? expected[0] : undefined;
  if (only === undefined && isHeldBack(turn.context)) return void turn.say('answer', SAY.cautionFirst);
  if (only === undefined) return askWhere(turn, meaning);
  if (meaning.unit !== undefined && unitFor(meaning.unit, only.quantity) === undefined) {
    turn.say('question', SAY.otherUnit);
    return;
  }
  const value = asTakenOut(meaning.value, turn.context.step);
  takeReading(turn, { ...only, value, unit: meaning.unit ?? bareUnit(only.quantity, turn.context.units) }, 'as heard');
}

/** A bare weight that answers what was recovered went out. */
function asTakenOut(value: Value, step: Step | undefined): Value {
  return step?.id === 'refrigerant.recovered' && typeof value === 'number' ? -Math.abs(value) : value;
}

/** Why nothing was taken, where it is known. */
function notTakenWords({ reason, meaning }: Understanding): string {
  if (reason === 'other-unit') return SAY.otherUnit;
  if (meaning.kind === 'unclear' && meaning.reason === 'no-value' && meaning.at !== undefined)
    return SAY.valueAt(meaning.at);
  return SAY.notTaken;
}

function isInjury(meaning: Meaning): boolean {
  return meaning.kind === 'report' && meaning.report.type === 'injury';
}

/** A call for help is acted on at once, however doubtful; danger is where only the sound leaves a doubt. */
function isUrgent({ context }: Turn, { meaning, reason }: Understanding): boolean {
  if (isInjury(meaning)) return true;
  // A silence that was only guessed costs nothing.
  if (meaning.kind === 'command' && meaning.command === 'stop') return true;
  if (reason !== 'badly-heard') return false;
  if (meaning.kind === 'reading') return actsAtOnce(meaning.reading, context);
  return meaning.kind === 'report' && meaning.report.type === 'energy' && meaning.report.state === 'closed';
}

/** Whatever its digits or its place turn out to be, a voltage or a charge where none should be is warned of before it is asked. */
function warnOfVoltage(turn: Turn, meaning: Meaning): void {
  if (meaning.kind === 'several') for (const part of meaning.parts) warnOfVoltage(turn, part);
  if (meaning.kind === 'report' && meaning.report.type === 'absence-of-voltage')
    warnOfVoltageInProof(turn, meaning.report);
  if (meaning.kind === 'reading' && actsAtOnce(meaning.reading, turn.context) && isPresent(meaning.reading)) {
    followEnergy(turn, meaning.reading, zoneOf(meaning.reading.at));
  }
  if (meaning.kind === 'report' && meaning.report.type === 'observation') warnOfSeen(turn, meaning.report.observation);
}

/** Hands where they may be hurt, and a winding that reads to its shell: warned of before it is asked whether it is so. */
function warnOfHands(turn: Turn, meaning: Meaning): void {
  if (meaning.kind === 'several') for (const part of meaning.parts) warnOfHands(turn, part);
  if (meaning.kind === 'reading') heedGround(turn, meaning.reading);
  if (meaning.kind === 'wire' || meaning.kind === 'part' || meaning.kind === 'work')
    for (const { zones } of handsToldBy(meaning, turn.context)) sayUnproven(turn, zones);
  if (meaning.kind !== 'report') return;
  const { report } = meaning;
  if (report.type === 'observation') warnOfLook(turn, report.observation);
  if (report.type === 'discharged' && !READ_DEAD.includes(turn.context.energy[provedWith(report.zone)]))
    sayUnproven(turn, [report.zone]);
  if (report.type === 'part-moved' || report.type === 'cover' || report.type === 'deed') warnBeforeAsking(turn, report);
}

/** What is guessed of it may be a part that is fitted; what its words say may be no part at all. */
function warnOfBypass(turn: Turn, heard: string): void {
  const told = speltOut(heard);
  const sign = HAND_SIGNS.find(
    ({ words, tells }) =>
      tells.type === 'deed' && tells.deed === 'switch-bypassed' && told.some((one) => words.test(one)),
  );
  if (sign !== undefined) warnBeforeAsking(turn, sign.tells, sign.at);
}

/** A sentence that was not taken may tell of hands all the same: of a deed by its own words, else of where they were. */
function warnOfWords(turn: Turn, heard: string): void {
  const told = speltOut(heard);
  const signs = HAND_SIGNS.filter(({ words }) => told.some((one) => words.test(one)));
  for (const { tells, at } of signs) warnBeforeAsking(turn, tells, at);
  const zones = new Set(signs.flatMap(({ tells, at }) => at ?? handsAtDeed(tells)));
  recordUnproven(turn, quoteWords(heard), notProvenDead(turn, [...zones]), 'alone');
  tellUnproven(
    turn,
    quoteWords(heard),
    zonesOfHands(heard).filter((zone) => !zones.has(zone)),
    'alone',
  );
}

/** Another number where the place of one is asked: it takes its turn, and the one before it is left. */
function isOtherValue({ context }: Turn, { meaning }: Understanding): boolean {
  const question = openQuestion(context);
  return question?.kind === 'which-place' && meaning.kind === 'value' && meaning.value !== question.value;
}

/**
 * "I didn't pull the disconnect": what the words take back of the proofs and switches was heeded already; here they are
 * told back. A question which switch was opened is answered by that none was.
 */
function tellDenied(turn: Turn, what: NonNullable<ReturnType<typeof deniedOfSwitch>>): void {
  if (openQuestion(turn.context)?.kind === 'which-switch') turn.endQuestion('answered');
  turn.say('answer', SAY.notDone(what));
  turn.repeatStep();
}

/** Orders that answer something, and are nothing by themselves. */
const ANSWERS_ONLY: readonly CommandId[] = ['yes', 'no', 'got-it', 'live', 'done', 'fine', 'here', 'same-place'];

/** What the matcher itself doubts is asked: which of two values, which place, or whether it was heard right. */
function askBack(turn: Turn, understanding: Understanding): void {
  const { meaning, reason, twin } = understanding;
  if (
    meaning.kind === 'report' &&
    meaning.report.type === 'job-item' &&
    meaning.report.item === 'plate-line-unreadable'
  )
    return passPlateLine(turn);
  if (meaning.kind === 'reading' && reason === 'teen-or-ty' && twin !== undefined)
    return askTwin(turn, meaning.reading, twin);
  if (meaning.kind === 'reading' && reason === 'implausible') {
    const { quantity, at } = meaning.reading;
    if (isBeyondReason(meaning.reading)) return askFor(turn, [{ quantity, at }], SAY.valueAt(at));
    turn.record({ type: 'reading.refused', reading: meaning.reading, reason: 'impossible' });
    // A pressure of nitrogen that cannot be is the worst of them, if it is.
    const psi = at.includes('system') && quantity === 'pressure' ? inBaseUnit(meaning.reading) : undefined;
    if (psi !== undefined) heedTestLimit(turn, psi);
    return askFor(turn, [{ quantity, at }], SAY.impossible(meaning.reading));
  }
  if (meaning.kind === 'reading') {
    const why = reason ?? BECAUSE.notSure;
    turn.record({ type: 'reading.asked', reading: meaning.reading, why });
    turn.ask({ kind: 'confirm-reading', reading: meaning.reading, why }, SAY.doubtful(meaning.reading, ''));
    return;
  }
  if (meaning.kind === 'value' || reason === 'no-place') {
    if (!askPlace(turn, understanding)) turn.say('question', SAY.which);
    return;
  }
  if (meaning.kind === 'unclear') return askValue(turn, meaning);
  // "Yes: is that right?" asks nothing: an answer that is only guessed is none.
  const isAnswer = meaning.kind === 'command' && ANSWERS_ONLY.includes(meaning.command);
  const words = isAnswer ? undefined : meaningWords(meaning);
  if (words === undefined) {
    turn.say('question', SAY.unclear);
    return;
  }
  if (reason === 'implausible') turn.say('question', SAY.cannotBe(words));
  else turn.ask({ kind: 'confirm-meaning', meaning }, SAY.meant(words));
}

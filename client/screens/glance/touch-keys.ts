import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { latestReading, openQuestion } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { Step, VisitContext } from '../../visit/chart/context.ts';
import { placeBefore, placeHere } from '../../visit/intake/answer-place.ts';
import { lateBeingGiven, lateToAcknowledge } from '../../visit/intake/late-cautions.ts';
import { answersCaution } from '../../visit/steps/answers-caution.ts';
import { KEY, SWITCH } from '../../words/pages/key-words.ts';
import { showPlace, showValue } from '../../words/shown/show-reading.ts';
import { type CautionId, STANDING_RULES } from '../../words/talk/caution-words.ts';
import { keysForAction } from './action-keys.ts';
import { isPut, needsSupervisor } from './asked-now.ts';
import { commandKey, observationKey, padKey, reportKey, type TouchKey } from './touch-key.ts';

const SUPERVISOR: TouchKey = {
  label: KEY.supervisorHere,
  tone: 'first',
  width: 2,
  does: { do: 'open', sheet: 'supervisor' },
};

/** What is live was read before its caution: that is told then, and acknowledged by itself. */
const LATE = commandKey(KEY.live, 'live', 'warm', 2);

/** The few keys of the moment: an open caution or question first, then what answers the step. */
export function keysFor(context: VisitContext): readonly TouchKey[] {
  if (context.phase === 'closed') return [];
  const late = lateBeingGiven(context).length > 0 || lateToAcknowledge(context).length > 0;
  // A late caution is acknowledged beside whatever else is asked.
  if (late && context.caution === undefined) return [LATE, ...keysBeside(context)];
  return keysBeside(context);
}

function keysBeside(context: VisitContext): readonly TouchKey[] {
  if (isPut(context)) return [commandKey(KEY.fine, 'fine', 'first', 2)];
  if (context.held) return [commandKey(KEY.goOn, 'go-on', 'first', 2)];
  if (context.caution !== undefined) return keysForCaution(context, context.caution);
  const question = openQuestion(context);
  if (question !== undefined) return keysForQuestion(question, context);
  if (needsSupervisor(context)) return [SUPERVISOR];
  if (context.step !== undefined) return keysForStep(context.step, context);
  return [commandKey(KEY.whatNext, 'what-next', 'first', 2)];
}

/** The cautions of live work: their key says so. */
const OF_LIVE: readonly string[] = [...STANDING_RULES, 'live-line', 'live-control'] satisfies readonly CautionId[];

/** A caution, and beside it what answers the step that was asked in its breath: that acknowledges it too. */
function keysForCaution(context: VisitContext, caution: NonNullable<VisitContext['caution']>): readonly TouchKey[] {
  const { step } = context;
  // Keys wait until it was given whole: what would answer it then is looked for.
  const given = { ...context, caution: { ...caution, isSpoken: true } };
  const answers = (step === undefined || !caution.withStep ? [] : keysForStep(step, context)).filter(({ does }) => {
    if (does.do === 'pad') return true;
    return does.do === 'enter' ? answersCaution(given, does.meaning) : does.do === 'open' && does.sheet === 'part';
  });
  const width = answers.length === 0 ? 2 : 1;
  const isOfLive = caution.spoken.some(({ id }) => OF_LIVE.includes(id));
  const key = isOfLive ? commandKey(KEY.live, 'live', 'warm', width) : commandKey(KEY.haveIt, 'got-it', 'warm', width);
  return [key, ...answers];
}

/** Another value than the one in question is set right by the key for that, under "More". */
function keysForQuestion(question: Question, context: VisitContext): readonly TouchKey[] {
  switch (question.kind) {
    case 'teen-or-ty': {
      const { unit } = question.reading;
      return question.options.map((value) => reportKey(showValue(value, unit), { kind: 'value', value, unit }));
    }
    case 'confirm-reading':
      return [commandKey(KEY.yesShows, 'yes', 'first'), commandKey(KEY.no, 'no')];
    case 'confirm-meaning':
      // Where a reason is wanted a yes is not enough: it is said or typed, or the thing is set aside.
      if (question.wants === 'reason') return [commandKey(KEY.setAside, 'no', 'plain', 2)];
      return [commandKey(KEY.yes, 'yes', 'first'), commandKey(KEY.no, 'no')];
    case 'still-off':
      return [commandKey(KEY.stillOff, 'yes', 'first'), commandKey(KEY.notOff, 'no')];
    case 'which-place':
      return [...placeKeys(context), commandKey(KEY.leaveOut, 'pass')];
    case 'what-value':
      return [
        padKey(KEY.enterIt, { kind: 'reading', ...question.of[0], bench: false }),
        commandKey(KEY.leaveOut, 'pass'),
      ];
    case 'which-switch':
      return [...switchKeys(question), commandKey(KEY.leaveOut, 'pass')];
  }
}

/** Where the value may have been read: at the step's place, or where the one before it was. Any other is said. */
function placeKeys(context: VisitContext): readonly TouchKey[] {
  const [here, before] = [placeHere(context), placeBefore(context)];
  return [
    ...(here === undefined ? [] : [commandKey(showPlace(here.at), 'here', 'first')]),
    ...(before === undefined || (here !== undefined && samePlaces(here.at, before.at))
      ? []
      : [commandKey(showPlace(before.at), 'same-place')]),
  ];
}

function switchKeys({ state }: Extract<Question, { kind: 'which-switch' }>): readonly TouchKey[] {
  return SWITCHES.map((one) =>
    reportKey(SWITCH.names[one.device], { kind: 'report', report: { type: 'energy', ...one, state } }),
  );
}

const SWITCHES = [
  { device: 'disconnect', place: 'outdoor' },
  { device: 'breaker', place: 'panel' },
  { device: 'service-switch', place: 'air-handler' },
] as const;

/** The reading that a correction sets right now: the one in question, else the latest. */
export function readingToSetRight(context: VisitContext): Reading | undefined {
  const question = openQuestion(context);
  return question !== undefined && 'reading' in question ? question.reading : latestReading(context)?.reading;
}

function keysForStep(step: Step, context: VisitContext): readonly TouchKey[] {
  const pass = commandKey(KEY.pass, 'pass');
  switch (step.ask.kind) {
    case 'reading':
      return [
        padKey(KEY.enterIt, { kind: 'reading', quantity: step.ask.quantity, at: step.ask.at, bench: step.needs.bench }),
        pass,
      ];
    case 'look':
      return [...step.ask.answers.map((answer) => observationKey(answer)), pass];
    case 'action':
      return keysForAction(step, context);
  }
}

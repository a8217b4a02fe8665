import type { Focus } from '../../../grammar/vocabulary/focuses.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { cautionBreath } from '../../words/talk/caution-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { cautionZone, hazardCautions, isOfMeter, ownCautions, standingRules } from '../rules/cautions-due.ts';
import { askWords, paceOf, stepWords } from '../steps/ask-step.ts';
import { chooseStep } from '../steps/choose-step.ts';
import { focusOf } from '../steps/focus-of.ts';
import type { Step, VisitContext } from './context.ts';
import { act } from './setup.ts';
import type { Turn } from './turn.ts';

const offer = act((turn) => {
  if (turn.context.questions.length > 0 || turn.context.waits) return;
  const step = chooseStep(turn.context);
  if (step === undefined) return;
  turn.talk({ step });
  if (step.source === 'planner') moveFocus(turn, focusOf(step));
  turn.raise({ type: 'step.offered' });
});

/** The planner's next test says which part of the unit is searched, in any order. */
function moveFocus(turn: Turn, focus: Focus): void {
  if (turn.context.focus !== focus) turn.record({ type: 'focus.moved', focus });
}

/** The standing rules in breaths of their own, on arrival with the question for the meter; then the step with its cautions. */
const speakCaution = act((turn) => {
  const { step } = turn.context;
  if (step === undefined) return;
  const rules = standingRules(step, turn.context);
  const asked = paceOf(turn.context) === 'brief' || isOfMeter(step) ? askWords(step, turn.context) : '';
  const breath = cautionBreath(ownCautions(step, turn.context), hazardCautions(step, turn.context), asked);
  const spoken = [...rules, ...breath.told];
  if (spoken.length === 0) return;
  const said = [...rules.map(({ words }) => words), ...(breath.told.length === 0 ? [] : [breath.text])];
  const withMeter = isOfMeter(step) ? `${said.pop()} ${asked}` : [];
  const prompts = said.concat(withMeter).map((words) => turn.say('caution', words));
  const withStep = breath.withStep || isOfMeter(step);
  turn.talk({ caution: { spoken, zone: step.zone, prompts, withStep, isSpoken: false } });
});

const cautionSpoken = act((turn) => {
  const { caution } = turn.context;
  if (caution === undefined) return;
  for (const { id, words, source } of caution.spoken)
    turn.record({ type: 'caution.spoken', caution: id, words, source, ...zoneIn(caution, id), ...shownIn(caution) });
  turn.talk({ caution: { ...caution, prompts: [], isSpoken: true } });
});

function shownIn({ isShown }: NonNullable<VisitContext['caution']>): { readonly shown?: true } {
  return isShown === true ? { shown: true } : {};
}

function zoneIn(caution: NonNullable<VisitContext['caution']>, id: string): { readonly zone?: ZoneId } {
  const zone = cautionZone(id, caution.zone);
  return zone === 'none' ? {} : { zone };
}

const acknowledge = act((turn) => {
  const { caution, step } = turn.context;
  if (caution === undefined) return;
  for (const { id } of caution.spoken)
    turn.record({ type: 'caution.acknowledged', caution: id, ...zoneIn(caution, id) });
  const { withStep } = caution;
  turn.talk({ caution: undefined, cautionedFor: step?.id, toldWithCaution: withStep ? step?.id : undefined });
});

const askStep = act((turn) => {
  const { step } = turn.context;
  if (step === undefined) return;
  const words = stepWords(step, turn.context);
  turn.record({ type: 'step.asked', step: step.id, words });
  if (turn.context.toldWithCaution !== step.id) turn.say('step', words);
  turn.talk({ toldWithCaution: undefined, asked: askedAnd(step, turn.context) });
});

/** So many steps one can go back. */
const MOST_BACK = 12;

function askedAnd(step: Step, { asked }: VisitContext): readonly Step[] {
  return asked.at(-1)?.id === step.id ? asked : [...asked, step].slice(-MOST_BACK);
}

const repeatStep = act((turn) => {
  const { step, questions } = turn.context;
  if (step !== undefined && questions.length === 0 && !turn.context.waits)
    turn.say('step', stepWords(step, turn.context));
});

const setAside = act((turn) => turn.talk({ step: undefined, caution: undefined }));
const setAsideAndGoOn = act((turn) => {
  turn.talk({ step: undefined, caution: undefined });
  turn.raise({ type: 'step.review' });
});

const resume = act((turn) => {
  turn.record({ type: 'visit.resumed' });
  turn.raise({ type: 'step.review' });
});

/** The visit is held: the step is set aside, and none is offered until it goes on. An open question stands through it. */
export const hold = act((turn) => {
  turn.talk({ step: undefined, caution: undefined });
  turn.record({ type: 'visit.held' });
});

const leave = {
  'step.answered': { target: '#step-resting', actions: setAsideAndGoOn },
  'step.review': [
    { guard: 'step answered', target: '#step-resting', actions: setAsideAndGoOn },
    { guard: 'hands-on without proof', target: '#step-resting', actions: setAsideAndGoOn },
    { guard: 'step out of place', target: '#step-resting', actions: setAsideAndGoOn },
  ],
  'step.set-aside': { target: '#step-resting', actions: setAside },
} as const;

/**
 * One step at a time: chosen, guarded, cautioned, asked. Nothing reaches `asked` but through `guarded`, and from there
 * a live step only through a caution that was spoken whole and then acknowledged.
 */
export const STEP_STATES = {
  resting: {
    id: 'step-resting',
    on: { 'step.review': { actions: offer }, 'step.offered': 'guarded' },
  },
  guarded: {
    id: 'step-guarded',
    always: [
      { guard: 'hands-on without proof', target: 'resting', actions: setAside },
      { guard: 'caution due', target: 'cautioning' },
      { guard: 'supervisor due', target: 'unsupervised' },
      { target: 'asked' },
    ],
  },
  cautioning: {
    initial: 'speaking',
    on: leave,
    states: {
      speaking: {
        entry: speakCaution,
        on: {
          'caution.over': { target: 'awaiting', actions: cautionSpoken },
          'caution.cut': 'silenced',
        },
      },
      // "Stop" is silence: what was cut counts as unsaid, and is spoken again when it is asked for.
      silenced: { on: { 'caution.again': 'speaking', 'caution.acknowledged': 'speaking' } },
      awaiting: { on: { 'caution.acknowledged': { target: '#step-guarded', actions: acknowledge } } },
    },
  },
  unsupervised: {
    entry: act((turn) => void turn.say('warning', SAY.supervisorFirst)),
    on: {
      ...leave,
      'step.review': [{ guard: 'supervisor there', target: 'guarded' }, ...leave['step.review']],
    },
  },
  asked: { entry: askStep, on: { ...leave, 'step.repeat': { actions: repeatStep } } },
  held: { on: { hold: {}, 'go.on': { target: 'resting', actions: resume } } },
} as const;

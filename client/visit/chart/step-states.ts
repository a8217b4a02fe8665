import type { Focus } from '../../../grammar/visit/events.ts';
import { cautionBreath, type SpokenCaution, STANDING_RULES } from '../../words/talk/caution-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { hazardCautions, isOfMeter, ownCautions } from '../rules/cautions-due.ts';
import { askWords, paceOf, stepWords } from '../steps/ask-step.ts';
import { chooseStep } from '../steps/choose-step.ts';
import { focusOf } from '../steps/focus-of.ts';
import type { Step } from './context.ts';
import { act } from './setup.ts';
import type { Turn } from './turn.ts';

const offer = act((turn) => {
  if (turn.context.questions.length > 0) return;
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

const speakCaution = act((turn) => {
  const { step } = turn.context;
  if (step === undefined) return;
  const own = ownCautions(step, turn.context);
  if (isStanding(own)) return speakStandingRules(turn, own, step);
  const asked = paceOf(turn.context) === 'brief' ? askWords(step, turn.context) : '';
  const { told, text, withStep } = cautionBreath(own, hazardCautions(step, turn.context), asked);
  if (told.length === 0) return;
  const prompts = [turn.say('caution', text)];
  turn.talk({ caution: { spoken: told, zone: step.zone, prompts, withStep, isSpoken: false } });
});

/** In two breaths, and belonging to no cabinet; on arrival they end in the question for the meter. */
function speakStandingRules(turn: Turn, spoken: readonly SpokenCaution[], step: Step): void {
  const withStep = isOfMeter(step);
  const prompts = spoken.map(({ words }, index) =>
    turn.say('caution', withStep && index === spoken.length - 1 ? `${words} ${askWords(step, turn.context)}` : words),
  );
  turn.talk({ caution: { spoken, zone: 'none', prompts, withStep, isSpoken: false } });
}

function isStanding(own: readonly SpokenCaution[]): boolean {
  return own.some(({ id }) => id === STANDING_RULES[0]);
}

const cautionSpoken = act((turn) => {
  const { caution } = turn.context;
  if (caution === undefined) return;
  const zone = caution.zone === 'none' ? {} : { zone: caution.zone };
  for (const { id, words, source } of caution.spoken)
    turn.record({ type: 'caution.spoken', caution: id, words, source, ...zone });
  turn.talk({ caution: { ...caution, prompts: [], isSpoken: true } });
});

const acknowledge = act((turn) => {
  const { caution, step } = turn.context;
  if (caution === undefined) return;
  const zone = caution.zone === 'none' ? {} : { zone: caution.zone };
  for (const { id } of caution.spoken) turn.record({ type: 'caution.acknowledged', caution: id, ...zone });
  const { withStep } = caution;
  turn.talk({ caution: undefined, cautionedFor: step?.id, toldWithCaution: withStep ? step?.id : undefined });
});

const askStep = act((turn) => {
  const { step } = turn.context;
  if (step === undefined) return;
  const words = stepWords(step, turn.context);
  turn.record({ type: 'step.asked', step: step.id, words });
  if (turn.context.toldWithCaution !== step.id) turn.say('step', words);
  turn.talk({ toldWithCaution: undefined });
});

const repeatStep = act((turn) => {
  const { step, questions } = turn.context;
  if (step !== undefined && questions.length === 0) turn.say('step', stepWords(step, turn.context));
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

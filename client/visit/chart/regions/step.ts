import type { Focus } from '../../../../grammar/visit/events.ts';
import { cautionPrompt } from '../../../words/talk/caution-words.ts';
import { SAY } from '../../../words/talk/prompts.ts';
import { cautionKey, dueCautions } from '../../rules/cautions-due.ts';
import { stepWords } from '../../steps/ask-step.ts';
import { chooseStep } from '../../steps/choose-step.ts';
import { focusOf } from '../../steps/focus-of.ts';
import { act, visitSetup } from '../setup.ts';
import type { Turn } from '../turn.ts';

const offer = act((turn: Turn) => {
  if (turn.context.question !== undefined || turn.context.held) return;
  const step = chooseStep(turn.context);
  if (step === undefined) return;
  turn.set({ step });
  if (step.source === 'planner') moveFocus(turn, focusOf(step));
  turn.raise({ type: 'step.offered' });
});

/** The planner's next test says which part of the unit is searched, in any order. */
function moveFocus(turn: Turn, focus: Focus): void {
  if (turn.context.focus === focus) return;
  turn.set({ focus });
  turn.record({ type: 'focus.moved', focus });
}

const speakCaution = act((turn: Turn) => {
  const { step } = turn.context;
  const due = step === undefined ? [] : dueCautions(step, turn.context);
  if (step === undefined || due.length === 0) return;
  const first = turn.context.acknowledged.length === 0;
  const prompt = turn.say('caution', cautionPrompt(due, first));
  turn.set({ caution: { spoken: due, zone: step.zone, prompt } });
});

const cautionSpoken = act((turn: Turn) => {
  const { caution } = turn.context;
  if (caution === undefined) return;
  const zone = caution.zone === 'none' ? {} : { zone: caution.zone };
  for (const { id, words, source } of caution.spoken)
    turn.record({ type: 'caution.spoken', caution: id, words, source, ...zone });
});

const acknowledge = act((turn: Turn) => {
  const { caution } = turn.context;
  if (caution === undefined) return;
  const zone = caution.zone === 'none' ? {} : { zone: caution.zone };
  for (const { id } of caution.spoken) turn.record({ type: 'caution.acknowledged', caution: id, ...zone });
  turn.set({
    caution: undefined,
    cautionedFor: turn.context.step?.id,
    acknowledged: [...turn.context.acknowledged, ...caution.spoken.map(({ id }) => cautionKey(id, caution.zone))],
  });
});

const askStep = act((turn: Turn) => {
  const { step } = turn.context;
  if (step === undefined) return;
  const words = stepWords(step, turn.context);
  turn.record({ type: 'step.asked', step: step.id, words });
  turn.say('step', words);
});

const setAside = act((turn: Turn) => turn.set({ step: undefined, caution: undefined }));
const setAsideAndGoOn = act((turn: Turn) => {
  turn.set({ step: undefined, caution: undefined });
  turn.raise({ type: 'step.wanted' });
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
export const stepRegion = visitSetup.createStateConfig({
  initial: 'resting',
  states: {
    resting: {
      id: 'step-resting',
      on: { 'step.wanted': { actions: offer }, 'step.review': { actions: offer }, 'step.offered': 'guarded' },
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
            'mouth.finished': [
              { guard: 'caution was spoken', target: 'awaiting', actions: cautionSpoken },
              { guard: 'caution was cut', target: 'speaking', reenter: true },
            ],
          },
        },
        awaiting: { on: { 'caution.acknowledged': { target: '#step-guarded', actions: acknowledge } } },
      },
    },
    unsupervised: {
      entry: act((turn: Turn) => void turn.say('warning', SAY.supervisorFirst)),
      on: {
        ...leave,
        'step.review': [{ guard: 'supervisor there', target: 'guarded' }, ...leave['step.review']],
      },
    },
    asked: { entry: askStep, on: leave },
  },
});

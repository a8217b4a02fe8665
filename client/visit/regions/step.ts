import { cautionKey, cautionsFor, dueCautions, GOVERNING_WORDS } from '../cautions.ts';
import { chooseStep, isProvenDead, needsDead, undoes } from '../choose-step.ts';
import type { VisitContext } from '../context.ts';
import { focusOf } from '../focus-of.ts';
import { isAnswered } from '../intake/settle-turn.ts';
import type { MachineEvent } from '../messages.ts';
import { SAY, stepWords } from '../prompts.ts';
import { act, visitSetup } from '../setup.ts';
import type { Turn } from '../turn.ts';

interface Seen {
  readonly context: VisitContext;
  readonly event: MachineEvent;
}

/** Hands or an ohmmeter would meet a zone that is not proven dead. The interlock: such a step is never prompted. */
function handsOnWithoutProof({ context }: Seen): boolean {
  return context.step !== undefined && needsDead(context.step.needs) && !isProvenDead(context.step.zone, context);
}

function cautionDue({ context }: Seen): boolean {
  return context.step !== undefined && dueCautions(context.step, context).length > 0;
}

/** A trainee's live step on a real visit wants a supervisor's acknowledgement first. */
function supervisorDue({ context }: Seen): boolean {
  const { step, role, supervisor } = context;
  return role === 'trainee' && supervisor === undefined && step !== undefined && cautionsFor(step).length > 0;
}

function supervisorThere({ context }: Seen): boolean {
  return context.supervisor !== undefined;
}

function cautionWasSpoken({ context, event }: Seen): boolean {
  return event.type === 'mouth.finished' && event.prompt === context.caution?.prompt && event.outcome === 'spoken';
}

function cautionWasCut({ context, event }: Seen): boolean {
  return event.type === 'mouth.finished' && event.prompt === context.caution?.prompt && event.outcome === 'cut';
}

const offer = act((turn: Turn) => {
  if (turn.context.question !== undefined || turn.context.held) return;
  const step = chooseStep(turn.context);
  if (step === undefined) return;
  turn.set({ step });
  if (step.source === 'planner') turn.raise({ type: 'focus.on', focus: focusOf(step) });
  turn.raise({ type: 'step.offered' });
});

const speakCaution = act((turn: Turn) => {
  const { step } = turn.context;
  const due = step === undefined ? [] : dueCautions(step, turn.context);
  if (step === undefined || due.length === 0) return;
  const first = turn.context.acknowledged.length === 0;
  const sentences = [
    ...due.map((one) => one.words),
    ...(first ? [GOVERNING_WORDS, 'Say "live" when you have it.'] : []),
  ];
  const prompt = turn.say('caution', sentences.join(' '));
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

function answered({ context }: Seen): boolean {
  return context.step !== undefined && isAnswered(context.step, context);
}

/** The visit has moved on: the step belongs to a phase that is past, or another must come before it now. */
function outOfPlace({ context }: Seen): boolean {
  const { step, phase } = context;
  if (step === undefined) return false;
  if (undoes(step.needs, context)) return true;
  if (step.source === 'energy') {
    const now = chooseStep(context);
    return now !== undefined && now.id !== step.id;
  }
  return PHASE_OF[step.source] !== phase;
}

const PHASE_OF = { arrive: 'arrive', planner: 'testing', repair: 'repair', prove: 'prove', close: 'close' } as const;

const setAside = act((turn: Turn) => turn.set({ step: undefined, caution: undefined }));
const setAsideAndGoOn = act((turn: Turn) => {
  turn.set({ step: undefined, caution: undefined });
  turn.raise({ type: 'step.wanted' });
});

const leave = {
  'step.answered': { target: '#step-resting', actions: setAsideAndGoOn },
  'step.review': [
    { guard: answered, target: '#step-resting', actions: setAsideAndGoOn },
    { guard: handsOnWithoutProof, target: '#step-resting', actions: setAsideAndGoOn },
    { guard: outOfPlace, target: '#step-resting', actions: setAsideAndGoOn },
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
        { guard: handsOnWithoutProof, target: 'resting', actions: setAside },
        { guard: cautionDue, target: 'cautioning' },
        { guard: supervisorDue, target: 'unsupervised' },
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
              { guard: cautionWasSpoken, target: 'awaiting', actions: cautionSpoken },
              { guard: cautionWasCut, target: 'speaking', reenter: true },
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
        'step.review': [{ guard: supervisorThere, target: 'guarded' }, ...leave['step.review']],
      },
    },
    asked: { entry: askStep, on: leave },
  },
});

import { initialTransition, type SnapshotFrom } from 'xstate';
import { noFacts, type VisitFacts } from '../../../grammar/visit/facts.ts';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import { heedCircuit } from '../intake/heed-circuit.ts';
import { settleTurn } from '../intake/settle-turn.ts';
import { takeAfterClose, takeInput } from '../intake/take-input.ts';
import { takeMeanings } from '../intake/take-utterance.ts';
import { noTalk, type VisitContext } from './context.ts';
import type { MachineEvent } from './messages.ts';
import { act, visitSetup } from './setup.ts';
import { hold, STEP_STATES } from './step-states.ts';

const take = act((turn, event) => {
  if (isInput(event)) takeInput(turn, event);
});

const takeLeft = act((turn, event) => {
  if (event.type !== 'meanings.left') return;
  takeMeanings(turn, event.meanings, event.readings);
  heedCircuit(turn);
  if (!turn.goesOn) settleTurn(turn);
});

const takeClosed = act((turn, event) => {
  if (isInput(event)) takeAfterClose(turn, event);
});

/** Every input, with what is made of it in a state. */
function everyInput<A>(actions: A) {
  return {
    'opened.visit': { actions },
    'chose.units': { actions },
    'restored.visit': { actions },
    'took.over.visit': { actions },
    'heard.utterance': { actions },
    'touched.command': { actions },
    'went.to-test': { actions },
    'mouth.finished': { actions },
    'diagnosis.answered': { actions },
    'timer.elapsed': { actions },
    'wrote.words': { actions },
    'took.photo': { actions },
    'supervisor.acknowledged': { actions },
    'remarked.visit': { actions },
    'edge.failed': { actions },
  } satisfies Readonly<Record<VisitInput['type'], unknown>>;
}
const INPUTS = everyInput(0);

function isInput(event: MachineEvent): event is VisitInput {
  return event.type in INPUTS;
}

/**
 * The visit's statechart: open, one step at a time or held, until it is closed. What moves it comes in as inputs, time
 * among them; what it records, says or asks comes back as actions for the runner. The facts in its context change by
 * recorded events alone; energy and phase have charts of their own (zone-energy.ts, phase-chart.ts).
 */
export const visitMachine = visitSetup.createMachine({
  id: 'visit',
  context: ({ input }) => input,
  initial: 'open',
  states: {
    open: {
      initial: 'resting',
      always: { guard: 'visit closed', target: 'closed' },
      on: { ...everyInput(take), 'meanings.left': { actions: takeLeft }, hold: { target: '.held', actions: hold } },
      states: STEP_STATES,
    },
    closed: {
      on: {
        'heard.utterance': { actions: takeClosed },
        'touched.command': { actions: takeClosed },
        'remarked.visit': { actions: takeClosed },
        'wrote.words': { actions: takeClosed },
        'took.photo': { actions: takeClosed },
      },
    },
  },
});

export type VisitSnapshot = SnapshotFrom<typeof visitMachine>;

/** A visit before its first input. */
export function newVisit(machine = visitMachine): VisitSnapshot {
  return initialTransition(machine, { ...noFacts(), ...noTalk() })[0];
}

/** A visit as its facts tell; its talk begins with the next input. */
export function visitOf(facts: VisitFacts, machine = visitMachine): VisitSnapshot {
  const fresh = facts.assessment?.forSeq === facts.evidenceNumber;
  const context: VisitContext = {
    ...facts,
    ...noTalk(),
    askedFor: fresh ? facts.evidenceNumber : -1,
    clockBase: facts.now,
  };
  const value = facts.phase === 'closed' ? 'closed' : { open: facts.held ? ('held' as const) : ('resting' as const) };
  return machine.resolveState({ value, context });
}

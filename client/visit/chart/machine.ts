import type { HeardUtterance, VisitInput } from '../../../grammar/visit/inputs.ts';
import { type EnergyState, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { gateUnit } from '../intake/gate-unit.ts';
import { heedPower } from '../intake/heed-power.ts';
import { passOptional } from '../intake/pass-optional.ts';
import { settleTurn } from '../intake/settle-turn.ts';
import { takeAnswer } from '../intake/take-answer.ts';
import { takeCommand } from '../intake/take-command.ts';
import { takeTimer } from '../intake/take-timer.ts';
import { takeUtterance } from '../intake/take-utterance.ts';
import type { VisitContext } from './context.ts';
import { attentionRegion } from './regions/attention.ts';
import { energyRegion } from './regions/energy.ts';
import { phaseRegion } from './regions/phase.ts';
import { roleRegion } from './regions/role.ts';
import { stepRegion } from './regions/step.ts';
import { act, visitSetup } from './setup.ts';
import type { Turn } from './turn.ts';

/** Inputs that a region takes: what the step's caution waits for, and who may go on. */
type TakenByRegion = 'mouth.finished' | 'supervisor.acknowledged';

type Input<T extends VisitInput['type']> = Extract<VisitInput, { type: T }>;

/** A handler for one kind of input: sets the time, takes the input, then settles what the turn has brought about. */
function take<T extends VisitInput['type']>(type: T, handle: (turn: Turn, input: Input<T>) => void) {
  return act((turn, event) => {
    if (event.type !== type) return;
    const input = event as Input<T>;
    turn.set({ now: input.time });
    handle(turn, input);
    if (!turn.goesOn) settleTurn(turn);
  });
}

function takeHeard(turn: Turn, utterance: HeardUtterance): void {
  takeUtterance(turn, utterance);
  passOptional(turn, utterance);
}

function openVisit(turn: Turn, input: Input<'opened.visit'>): void {
  const { visit, site, complaint, role, unit, software } = input;
  turn.set({ visit, site, role, unit });
  turn.record({ type: 'visit.opened', visit, site, complaint, role, unit, software });
  turn.record({ type: 'phase.entered', phase: 'arrive' });
  turn.say('answer', SAY.opened(site, complaint));
  if (role === 'trainee') turn.raise({ type: 'trainee.opened' });
  gateUnit(turn);
}

/** What a visit holds before its first input. */
export function emptyContext(): VisitContext {
  return {
    visit: '',
    site: '',
    role: 'technician',
    unit: { id: 'unknown' },
    plate: {},
    now: { at: '1970-01-01T00:00:00.000Z', mono: 0 },
    phase: 'arrive',
    focus: undefined,
    supervisor: undefined,
    gate: undefined,
    lastHeard: 0,
    pace: 'brief',
    held: false,
    energy: Object.fromEntries(ZONES.map((zone) => [zone, 'unknown'])) as Record<ZoneId, EnergyState>,
    call: 'unknown',
    isolation: { outdoor: 'unknown', panel: 'unknown', 'air-handler': 'unknown' },
    proof: undefined,
    discharged: [],
    readings: [],
    evidence: [],
    evidenceNumber: 0,
    askedFor: -1,
    assessment: undefined,
    parked: [],
    settled: [],
    step: undefined,
    question: undefined,
    acknowledged: [],
    saidLate: [],
    cautionedFor: undefined,
    caution: undefined,
    finding: undefined,
    parts: [],
    undoable: [],
    closeRefused: [],
    wires: [],
    refrigerantWork: {},
    check: undefined,
    items: [],
    recommendations: [],
    signed: {},
    passedBy: [],
    runningSince: undefined,
    lastPrompt: undefined,
    promptCount: 0,
    readingCount: 0,
  };
}

/**
 * The visit's statechart: five parallel regions and the inputs that move them. It is moved by the pure `transition()`
 * only; time enters as inputs, and what it records, says or asks comes back as actions for the runner.
 */
export const visitMachine = visitSetup.createMachine({
  id: 'visit',
  context: ({ input }) => input,
  type: 'parallel',
  states: {
    phase: phaseRegion,
    energy: energyRegion,
    attention: attentionRegion,
    step: stepRegion,
    role: roleRegion,
  },
  on: {
    'opened.visit': { actions: take('opened.visit', openVisit) },
    'heard.utterance': {
      actions: take('heard.utterance', (turn, input) => {
        turn.set({ lastHeard: input.time.mono });
        // A proof ends before anything else is made of the words, and what they mean is judged by what is left.
        if (heedPower(turn, input.utterance)) turn.raise({ type: 'heard.goes-on', utterance: input.utterance });
        else takeHeard(turn, input.utterance);
      }),
    },
    'heard.goes-on': {
      actions: act((turn, event) => {
        if (event.type !== 'heard.goes-on') return;
        takeHeard(turn, event.utterance);
        settleTurn(turn);
      }),
    },
    'touched.command': { actions: take('touched.command', (turn, input) => takeCommand(turn, input.command)) },
    'diagnosis.answered': { actions: take('diagnosis.answered', (turn, input) => takeAnswer(turn, input.answer)) },
    'timer.elapsed': { actions: take('timer.elapsed', (turn, input) => takeTimer(turn, input.timer)) },
    // Not a turn: neither the clock of the visit nor any region moves by it.
    'remarked.visit': {
      actions: act((turn, event) => {
        if (event.type === 'remarked.visit')
          turn.record({ type: 'remark.made', author: event.author, text: event.text });
      }),
    },
    'edge.failed': {
      actions: take('edge.failed', (turn, input) => {
        turn.record({ type: 'edge.interrupted', edge: input.edge, fault: input.fault, sentence: input.sentence });
        turn.say('warning', input.sentence);
      }),
    },
  } satisfies Readonly<Record<Exclude<VisitInput['type'], TakenByRegion> | 'heard.goes-on', unknown>>,
});

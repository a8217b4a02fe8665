import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import { type EnergyState, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { gateUnit } from '../intake/gate-unit.ts';
import { heedClock } from '../intake/heed-clock.ts';
import { heedPower } from '../intake/heed-power.ts';
import { passOptional } from '../intake/pass-optional.ts';
import { settleTurn } from '../intake/settle-turn.ts';
import { takeAnswer } from '../intake/take-answer.ts';
import { takeCommand } from '../intake/take-command.ts';
import { takeTimer } from '../intake/take-timer.ts';
import { takeMeanings, takeUtterance } from '../intake/take-utterance.ts';
import type { VisitContext } from './context.ts';
import type { MachineEvent } from './messages.ts';
import { attentionRegion } from './regions/attention.ts';
import { energyRegion } from './regions/energy.ts';
import { phaseRegion } from './regions/phase.ts';
import { roleRegion } from './regions/role.ts';
import { stepRegion } from './regions/step.ts';
import { act, visitSetup } from './setup.ts';
import type { Turn } from './turn.ts';

/** Inputs that a region takes: what the step's caution waits for, and who may go on. */
type TakenByRegion = 'mouth.finished' | 'supervisor.acknowledged';

/** Kept, and no turn: neither the clock of the visit nor any region moves by it. */
type NoTurn = 'remarked.visit';

type Input<T extends VisitInput['type']> = Extract<VisitInput, { type: T }>;
type TurnType = Exclude<VisitInput['type'], TakenByRegion | NoTurn>;

/** What a turn makes of each kind of input. */
const TAKE: { readonly [T in TurnType]: (turn: Turn, input: Input<T>) => void } = {
  'opened.visit': openVisit,
  'heard.utterance': takeHeard,
  'touched.command': (turn, { command }) => takeCommand(turn, command),
  'diagnosis.answered': (turn, { answer }) => takeAnswer(turn, answer),
  'timer.elapsed': (turn, { timer }) => takeTimer(turn, timer),
  'edge.failed': (turn, { edge, fault, sentence }) => {
    turn.record({ type: 'edge.interrupted', edge, fault, sentence });
    turn.say('warning', sentence);
  },
};

/** Takes an input, then settles what the turn has brought about. */
function handOn(turn: Turn, input: Input<TurnType>): void {
  (TAKE[input.type] as (turn: Turn, input: VisitInput) => void)(turn, input);
  if (!turn.goesOn) settleTurn(turn);
}

/** Sets the time; where the time alone ends a proof, that comes first. */
const take = act((turn, event) => {
  if (!isTurn(event)) return;
  const ended = heedClock(turn, event);
  turn.set({ now: event.time });
  if (ended) turn.raise({ type: 'input.goes-on', input: event });
  else handOn(turn, event);
});

const takeOn = act((turn, event) => {
  if (event.type === 'input.goes-on' && isTurn(event.input)) handOn(turn, event.input);
});

const takeLeft = act((turn, event) => {
  if (event.type !== 'meanings.left') return;
  takeMeanings(turn, event.meanings);
  if (!turn.goesOn) settleTurn(turn);
});

function isTurn(event: MachineEvent): event is Input<TurnType> {
  return event.type in TAKE;
}

/** A proof ends before anything else is made of the words, and what they mean is judged by what is left. */
function takeHeard(turn: Turn, input: Input<'heard.utterance'>): void {
  const { utterance } = input;
  // Noise is no sign that somebody is there.
  if (utterance.accepted && utterance.understanding.verdict !== 'rejected') turn.set({ lastHeard: input.time.mono });
  if (heedPower(turn, utterance)) {
    turn.raise({ type: 'input.goes-on', input });
    return;
  }
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
    clockBase: { at: '1970-01-01T00:00:00.000Z', mono: 0 },
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
    'opened.visit': { actions: take },
    'heard.utterance': { actions: take },
    'touched.command': { actions: take },
    'diagnosis.answered': { actions: take },
    'timer.elapsed': { actions: take },
    'edge.failed': { actions: take },
    'input.goes-on': { actions: takeOn },
    'meanings.left': { actions: takeLeft },
    'remarked.visit': {
      actions: act((turn, event) => {
        if (event.type === 'remarked.visit')
          turn.record({ type: 'remark.made', author: event.author, text: event.text });
      }),
    },
  } satisfies Readonly<Record<TurnType | NoTurn | 'input.goes-on' | 'meanings.left', unknown>>,
});

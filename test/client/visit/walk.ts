import { getMicrosteps, transition } from 'xstate';
import type { Step, VisitContext } from '../../../client/visit/chart/context.ts';
import { newVisit, type visitMachine } from '../../../client/visit/chart/machine.ts';
import type { Effect } from '../../../client/visit/chart/turn.ts';
import { cautionsFor, cautionZone } from '../../../client/visit/rules/cautions-due.ts';
import { needsDead } from '../../../client/visit/steps/choose-step.ts';
import { zoneOf } from '../../../client/visit/steps/plans.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { VisitOutcome } from '../../../grammar/visit/events.ts';
import { cautionKey } from '../../../grammar/visit/facts.ts';
import type { RankedTest, VisitInput } from '../../../grammar/visit/inputs.ts';
import { LIBRARY_UNIT } from './typed-visit.ts';

/** Things a technician may say at any moment, in no order: readings, reports, work, orders, and noise. */
export const LINES = [
  'leg one to ground one eighteen',
  'leg one to ground zero volts',
  'leg two to ground one nineteen',
  'leg one to leg two two forty one',
  'leg one to leg two zero volts',
  'T one to T two two forty',
  'contactor coil twenty five volts',
  'fan section three seventy volts',
  'fan common to fan run twelve ohms',
  'herm section forty four point one microfarads',
  'fan section one point one microfarads on the bench',
  'herm section zero volts d c',
  'fan section zero volts d c',
  'fan section thirty seven volts d c',
  'start cap zero volts d c',
  'fitted a hard start kit',
  'compressor amps fourteen',
  'compressor amps eleven point two',
  'one four',
  'thermostat is calling',
  'thermostat is not calling',
  'outdoor fan is not turning',
  'outdoor fan is turning',
  'compressor is running',
  'covers are on',
  'outdoor disconnect is pulled',
  'outdoor disconnect is pulled and locked',
  'outdoor disconnect is back in',
  'breaker is open at the panel',
  'meter two forty zero zero zero zero zero zero meter two forty',
  'meter two forty zero one eighteen zero zero zero zero meter two forty',
  'meter proves two forty',
  'capacitor is discharged',
  'fitted a forty five over five dual capacitor four forty volt',
  'lifted the brown wire from fan',
  'landed the brown wire on fan',
  'jumper on from R to Y',
  'jumper off from R to Y',
  'outdoor air ninety four degrees',
  'return air eighty degrees',
  'supply air sixty one degrees',
  'note the panel door is bent',
  'correction one nineteen',
  'take that back',
  'live',
  'live',
  'live',
  'yes',
  'no',
  'what next',
  'why',
  'pass',
  'hold the visit',
  'go on with the visit',
  'full talk',
  'stop',
  'air handler leg one to ground one nineteen',
  'air handler switch is off and locked',
  'meter two forty zero zero zero meter two forty at the air handler',
  'blower capacitor zero volts d c',
  'control circuit meter twenty five zero meter twenty five',
  'breaker at the panel is off and locked',
  'disconnect line one to ground one nineteen',
  'meter two forty zero zero zero meter two forty at the disconnect line side',
  'good morning over there',
  'check on me every twenty minutes',
  'I am fine',
  'cancel the check',
  'I opened the system',
  'recovered six pounds four ounces',
  'nitrogen pressure three hundred psi',
  'vacuum four hundred microns',
  'pump is valved off',
  'customer agrees',
  'customer declined',
  'meter is cat three',
  'thermostat is set as agreed',
  'recommend a new filter',
  'technician signs robin vale',
  'customer not present',
] as const;

/** Rankings of the diagnosis, as inputs: live, dead, bench and look tests in several orders. */
export const RANKED: readonly RankedTest[] = [
  {
    id: 'volts-T1-T2',
    function: 'volts',
    quantity: 'voltage',
    at: ['T1', 'T2'],
    needs: { power: 'on', call: 'cooling', bench: false },
    minutes: 1,
    hazards: ['back-feed', 'line-voltage'],
  },
  {
    id: 'volts-coil',
    function: 'volts',
    quantity: 'voltage',
    at: ['coil-1', 'coil-2'],
    needs: { power: 'on', call: 'cooling', bench: false },
    minutes: 1,
    hazards: [],
  },
  {
    id: 'microfarads-fan',
    function: 'microfarads',
    quantity: 'capacitance',
    at: ['cap-C', 'cap-FAN'],
    needs: { power: 'off', call: 'any', bench: true },
    minutes: 3,
    hazards: ['capacitor-charge'],
  },
  {
    id: 'look-outdoor-fan',
    function: 'look',
    quantity: 'observation',
    at: [],
    answers: ['fan-turning', 'fan-not-turning'],
    needs: { power: 'on', call: 'cooling', bench: false },
    minutes: 1,
    hazards: [],
  },
  {
    id: 'amps-compressor',
    function: 'amps',
    quantity: 'current',
    at: ['compressor'],
    needs: { power: 'on', call: 'cooling', bench: false },
    minutes: 2,
    hazards: ['hot-line'],
  },
  {
    id: 'temperature-supply-air',
    function: 'temperature',
    quantity: 'temperature',
    at: ['supply-air'],
    needs: { power: 'on', call: 'cooling', bench: false },
    minutes: 2,
    hazards: [],
  },
  {
    id: 'pressure-suction',
    function: 'pressure',
    quantity: 'pressure',
    at: ['suction-port'],
    needs: { power: 'on', call: 'cooling', bench: false },
    minutes: 4,
    hazards: ['pressurised-refrigerant'],
  },
];

export type Move =
  | { readonly do: 'say'; readonly line: number }
  | { readonly do: 'mouth'; readonly outcome: 'spoken' | 'cut' }
  | { readonly do: 'rank'; readonly first: number; readonly done: boolean }
  | { readonly do: 'minutes'; readonly minutes: number }
  | { readonly do: 'supervise' };

export type Machine = typeof visitMachine;

export interface Walked {
  readonly broken: string | undefined;
  readonly states: ReadonlySet<string>;
}

/** One walk over a machine; `broken` names the first property it breaks, or is undefined. */
export function walk(
  machine: Machine,
  moves: readonly Move[],
  role: 'technician' | 'trainee',
  microsteps = false,
): Walked {
  const walker = new Walker(machine, role, microsteps);
  for (const move of moves) {
    walker.move(move);
    if (walker.broken !== undefined) return walker;
  }
  walker.reachClose();
  return walker;
}

/** What a machine is given when these things happen one after another: a line said, a move, an input as it stands. */
export function inputsOf(
  machine: Machine,
  role: 'technician' | 'trainee',
  happenings: readonly (string | Move | VisitInput)[],
): readonly VisitInput[] {
  const walker = new Walker(machine, role, false);
  for (const one of happenings) {
    if (typeof one === 'string') walker.say(one);
    else if ('do' in one) walker.move(one);
    else walker.take(one);
  }
  return walker.inputs;
}

/** The states of a value as dotted paths, parents too: { step: { cautioning: 'awaiting' } } is step, step.cautioning, … */
export function statesIn(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'string') return [`${path}${value}`];
  return Object.entries(value as Record<string, unknown>).flatMap(([key, inner]) => [
    `${path}${key}`,
    ...statesIn(inner, `${path}${key}.`),
  ]);
}

class Walker {
  broken: string | undefined;
  /** Every state of every region that was entered, as dotted paths. */
  readonly states = new Set<string>();
  /** All that the machine was given, in order. */
  readonly inputs: VisitInput[] = [];
  readonly #machine: Machine;
  #snapshot;
  readonly #microsteps: boolean;
  #mono = 0;
  #count = 0;
  readonly #spoken = new Set<string>();
  readonly #acknowledged = new Set<string>();

  constructor(machine: Machine, role: 'technician' | 'trainee', microsteps: boolean) {
    this.#machine = machine;
    this.#microsteps = microsteps;
    this.#snapshot = newVisit(machine);
    this.take({
      type: 'opened.visit',
      time: this.#time(),
      visit: 'walk',
      site: 'here',
      complaint: 'warm',
      role,
      unit: LIBRARY_UNIT,
      software: 'test',
    });
  }

  get context(): VisitContext {
    return this.#snapshot.context;
  }

  move(move: Move): void {
    switch (move.do) {
      case 'say':
        return this.say(LINES[move.line % LINES.length] ?? 'live');
      case 'mouth':
        return this.#mouth(move.outcome);
      case 'rank':
        return this.#rank(move.first, move.done);
      case 'minutes': {
        this.#mono += move.minutes * 60_000;
        for (const timer of ['quiet', 'proof', 'split-reminder', 'check', 'refrigerant'] as const)
          this.take({ type: 'timer.elapsed', time: this.#time(), timer });
        return;
      }
      case 'supervise':
        return this.take({ type: 'supervisor.acknowledged', time: this.#time(), supervisor: 'S. Visor' });
    }
  }

  say(text: string): void {
    this.#count += 1;
    const understanding = UNDERSTOOD.get(text) ?? understand(text);
    this.take({
      type: 'heard.utterance',
      time: this.#time(),
      utterance: { id: `w${this.#count}`, ear: 'typed', accepted: true, confidence: 1, understanding },
    });
  }

  #mouth(outcome: 'spoken' | 'cut'): void {
    const { caution } = this.context;
    if (caution === undefined) return;
    const { prompts, spoken, zone } = caution;
    if (outcome === 'spoken') for (const { id } of spoken) this.#spoken.add(cautionKey(id, cautionZone(id, zone)));
    for (const prompt of prompts) this.take({ type: 'mouth.finished', time: this.#time(), prompt, outcome });
  }

  #rank(first: number, done: boolean): void {
    const next = RANKED.map((_, index) => RANKED[(index + first) % RANKED.length]!);
    this.take({
      type: 'diagnosis.answered',
      time: this.#time(),
      answer: {
        version: 'walk',
        forSeq: this.context.evidenceNumber,
        suspects: [{ fault: 'fan-capacitor-weak', probability: done ? 0.97 : 0.3 }],
        next,
        hazards: [],
        done,
      },
    });
  }

  /** From wherever the walk stands: what is in the way is named, dealt with, and the visit closes. */
  reachClose(): void {
    for (let round = 0; round < 12 && !this.#closed(); round++) {
      for (const line of [
        'go on with the visit',
        'no',
        'one four',
        'correction one nineteen',
        'yes',
        'jumper off from R to Y',
        'landed the brown wire on fan',
        'outdoor disconnect is back in',
        'breaker at the panel is back on',
        'air handler switch is back on',
        'finish the visit',
        'note the walk is over here',
      ]) {
        if (!this.#closed()) this.say(line);
      }
    }
    if (!this.#closed()) this.broken ??= 'close can be reached from everywhere';
  }

  #closed(): boolean {
    return this.context.phase === 'closed';
  }

  #time(): { at: string; mono: number } {
    this.#mono += 1000;
    return { at: new Date(Date.parse('2026-06-15T14:00:00.000Z') + this.#mono).toISOString(), mono: this.#mono };
  }

  take(input: VisitInput): void {
    this.inputs.push(input);
    const before = this.context;
    if (this.#microsteps) this.#collectStates(input);
    const [next, actions] = transition(this.#machine, this.#snapshot, input);
    this.#snapshot = next;
    if (this.#microsteps) this.#collectFacts();
    const effects = actions as readonly Effect[];
    for (const effect of effects) if (effect.type === 'record') this.#check(effect.params.event, before);
    this.#checkWhole(input, effects, before);
    this.#checkDoubt();
  }

  /** A zone that is in doubt for ever is a dead end: it can neither be worked on nor be proven anew. */
  #checkDoubt(): void {
    const { energy, questions } = this.context;
    const isInDoubt = Object.values(energy).includes('in-doubt');
    if (isInDoubt && !this.#closed() && !questions.some(({ question }) => question.kind === 'still-off'))
      this.broken ??= 'a zone is in doubt only while it is asked whether it is still off';
  }

  /** The phase and the energy of each zone, which the facts hold. */
  #collectFacts(): void {
    this.states.add(`phase.${this.context.phase}`);
    for (const [zone, energy] of Object.entries(this.context.energy)) this.states.add(`${zone}.${energy}`);
  }

  /** All states passed through, the fleeting ones too. */
  #collectStates(input: VisitInput): void {
    for (const [passed] of getMicrosteps(this.#machine, this.#snapshot, input)) {
      for (const state of statesIn(passed.value)) this.states.add(state);
    }
  }

  #check(event: VisitOutcome, before: VisitContext): void {
    switch (event.type) {
      case 'energy.changed':
        this.states.add(`${event.zone}.${event.to}`);
        return;
      case 'caution.acknowledged': {
        const key = cautionKey(event.caution, event.zone ?? 'none');
        if (!this.#spoken.has(key)) this.broken ??= 'a caution is acknowledged only after it was spoken whole';
        this.#acknowledged.add(key);
        return;
      }
      case 'step.asked':
        return this.#checkStep(this.context.step);
      case 'proof.began':
        if (before.role === 'trainee' && before.supervisor === undefined)
          this.broken ??= 'no trainee alone begins a proof';
        return;
      case 'reading.logged': {
        const { quantity, bench, at } = event.reading;
        const deadOnly = quantity === 'resistance' || quantity === 'capacitance' || quantity === 'insulation';
        if (deadOnly && bench !== true && !isReallyDead(zoneOf(at), before)) {
          this.broken ??= 'ohms and microfarads are logged only from proven dead or the bench';
        }
        if (before.role === 'trainee' && before.supervisor === undefined && LIVE.includes(quantity))
          this.broken ??= 'no live reading of a trainee alone is logged';
        return;
      }
    }
  }

  #checkStep(step: Step | undefined): void {
    if (step === undefined) return;
    if (cautionsFor(step).some((id) => !this.#acknowledged.has(cautionKey(id, step.zone)))) {
      this.broken ??= 'no live step is prompted without its caution spoken and acknowledged';
    }
    if (needsDead(step.needs) && !isReallyDead(step.zone, this.context)) {
      this.broken ??= 'no hands-on step is prompted outside proven dead';
    }
    if (this.context.role === 'trainee' && cautionsFor(step).length > 0 && this.context.supervisor === undefined) {
      this.broken ??= "no trainee's live step is prompted without a supervisor";
    }
  }

  #checkWhole(input: VisitInput, effects: readonly Effect[], before: VisitContext): void {
    if (input.type !== 'heard.utterance') return;
    const { meaning, verdict } = input.utterance.understanding;
    const events = effects.filter((effect) => effect.type === 'record').map((effect) => effect.params.event);
    if (before.phase !== 'closed' && events.length === 0 && effects.length === 0 && meaning.kind !== 'command') {
      this.broken ??= 'nothing that is heard goes by in silence';
    }
    if (meaning.kind === 'command' && meaning.command === 'stop' && !effects.some((effect) => effect.type === 'hush')) {
      this.broken ??= 'stop hushes from everywhere';
    }
    if (meaning.kind !== 'reading' || verdict !== 'logged' || before.questions.length > 0 || before.phase === 'closed')
      return;
    const fates = events.filter((event) => FATES.includes(event.type));
    if (fates.length !== 1)
      this.broken ??= `a reading is logged, asked, refused or kept waiting, once (${fates.length})`;
    const { quantity, value, at } = meaning.reading;
    const logged = fates[0]?.type === 'reading.logged';
    if (logged && quantity === 'voltage' && typeof value === 'number' && value >= 3) {
      const zone = zoneOf(at);
      if (zone !== 'none' && this.context.energy[zone] !== 'live')
        this.broken ??= 'live evidence ends every proof of its zone';
    }
  }
}

/** What may become of a reading. */
const FATES: readonly VisitOutcome['type'][] = ['reading.logged', 'reading.asked', 'reading.refused', 'reading.waits'];

/** What no trainee measures without a supervisor, by the paper's words: live readings. */
const LIVE: readonly string[] = ['voltage', 'voltage-dc', 'current'];

/** The test's own reading of "proven dead", from the mirror of the energy region alone. */
function isReallyDead(zone: Step['zone'], context: VisitContext): boolean {
  const outdoor = ['outdoor-load', 'capacitor-herm', 'capacitor-fan'] as const;
  const zones = zone === 'none' ? [] : (outdoor as readonly string[]).includes(zone) ? outdoor : [zone];
  return zones.every((one) => context.energy[one as (typeof outdoor)[number]] === 'proven-dead');
}

const UNDERSTOOD = new Map(LINES.map((line) => [line as string, understand(line)]));

import { CIRCUIT_RULES } from '../../grammar/visit/circuit-rules.ts';
import type { RankedTest } from '../../grammar/visit/inputs.ts';
import type { QuantityId } from '../../grammar/vocabulary/quantities.ts';
import type { ActionDone, Step, VisitContext } from './context.ts';

/** What is known of a refrigerant circuit that was opened. Weights in ounces, psi, microns, input clock in milliseconds. */
export interface CircuitWork {
  readonly recovered?: number;
  readonly test?: { readonly psi: number; readonly fahrenheit: number | undefined; readonly mono: number };
  readonly held?: true;
  readonly searched?: true;
  readonly microns?: number;
  readonly isolatedAt?: number;
  readonly stood?: true;
  readonly charged?: number;
}

/** Parts that cannot be fitted, and work that cannot be done, without opening the circuit. */
const OPENS: readonly string[] = ['compressor', 'filter-drier', 'leak-repaired'];

export function isCircuitOpened({ items, parts }: VisitContext): boolean {
  return items.includes('circuit-opened') || parts.some(({ part, work }) => OPENS.includes(work ?? part));
}

const NO_NEEDS: RankedTest['needs'] = { power: 'any', call: 'any', bench: false };

function step(id: string, ask: Step['ask']): Step {
  return { id: `circuit.${id}`, source: 'prove', ask, needs: NO_NEEDS, hazards: [], zone: 'none' };
}
const read = (id: string, quantity: QuantityId): Step => step(id, { kind: 'reading', quantity, at: ['system'] });
const act = (id: string, done: ActionDone): Step => step(id, { kind: 'action', done });

/** In the order of the work: out, tight, dry, and only then in again. Common practice. */
const PLAN = {
  recovered: read('recovered', 'mass'),
  testStart: read('test-start', 'pressure'),
  searched: act('searched', 'leak-searched'),
  testEnd: read('test-end', 'pressure'),
  evacuated: read('evacuated', 'vacuum'),
  isolated: act('isolated', 'vacuum-isolated'),
  decay: read('decay', 'vacuum'),
  charged: read('charged', 'mass'),
} as const;
export type CircuitStep = keyof typeof PLAN;

/** Whether each thing has come about, by whatever way it came. */
function isDone(name: CircuitStep, circuit: CircuitWork): boolean {
  switch (name) {
    case 'recovered':
      return circuit.recovered !== undefined;
    case 'testStart':
      return circuit.test !== undefined || circuit.held === true;
    case 'searched':
      return circuit.searched === true;
    case 'testEnd':
      return circuit.held === true;
    case 'evacuated':
      return circuit.microns !== undefined;
    case 'isolated':
      return circuit.isolatedAt !== undefined;
    case 'decay':
      return circuit.stood === true;
    case 'charged':
      return circuit.charged !== undefined;
  }
}

/** Ids of the steps that have come about. */
export function doneOfCircuit(circuit: CircuitWork): readonly string[] {
  return (Object.keys(PLAN) as CircuitStep[]).filter((name) => isDone(name, circuit)).map((name) => PLAN[name].id);
}

/** What the opened circuit still wants, in order; parts that were passed are left out, and named when the visit closes. */
export function missingOfCircuit(context: VisitContext): readonly CircuitStep[] {
  if (!isCircuitOpened(context)) return [];
  return (Object.keys(PLAN) as CircuitStep[]).filter((name) => !isDone(name, context.circuit));
}

/**
 * The next step of an opened circuit; `waiting` while a test has to stand; undefined where nothing is left. Power does
 * not go back before: a compressor is never run in vacuum.
 */
export function circuitStep(context: VisitContext): Step | 'waiting' | undefined {
  const passed = (name: CircuitStep) => context.parked.some((parked) => parked.step === PLAN[name].id);
  const name = missingOfCircuit(context).find((one) => !passed(one));
  if (name === undefined) return undefined;
  if (minutesLeft(name, context) > 0) return 'waiting';
  return PLAN[name];
}

/** While the repair goes on: out before the part goes in, and where the charge itself is the repair, all the rest behind it. */
export function circuitInRepair(context: VisitContext): Step | 'waiting' | undefined {
  const next = circuitStep(context);
  if (next !== PLAN.recovered && context.parts.length === 0) return undefined;
  return next === 'waiting' || next === undefined ? next : { ...next, source: 'repair' };
}

const MS_A_MINUTE = 60_000;

/** Minutes until a standing test may be read. */
export function minutesLeft(name: CircuitStep, { circuit, now }: VisitContext): number {
  const began = name === 'testEnd' ? circuit.test?.mono : name === 'decay' ? circuit.isolatedAt : undefined;
  if (began === undefined) return 0;
  const minutes = CIRCUIT_RULES[name === 'decay' ? 'decay' : 'pressure-test'].minutes;
  return Math.max(0, minutes - (now.mono - began) / MS_A_MINUTE);
}

/** Minutes until the test that is standing now may be read; 0 where none is. */
export function minutesToStand(context: VisitContext): number {
  const [next] = missingOfCircuit(context);
  return next === undefined ? 0 : minutesLeft(next, context);
}

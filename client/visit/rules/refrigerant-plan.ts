import { MS_A_MINUTE, type RankedTest } from '../../../grammar/visit/inputs.ts';
import type { RefrigerantWork } from '../../../grammar/visit/refrigerant-facts.ts';
import { REFRIGERANT_RULES } from '../../../grammar/visit/refrigerant-rules.ts';
import { isRefrigerantOpened } from '../../../grammar/visit/refrigerant-work.ts';
import { repairsMade } from '../../../grammar/visit/standing.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';

const NO_NEEDS: RankedTest['needs'] = { power: 'any', call: 'any', bench: false };

function step(id: string, ask: Step['ask']): Step {
  return { id: `refrigerant.${id}`, source: 'prove', ask, needs: NO_NEEDS, hazards: [], zone: 'none' };
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
export type RefrigerantStep = keyof typeof PLAN;

/** Whether each thing has come about, by whatever way it came. */
function isDone(name: RefrigerantStep, work: RefrigerantWork): boolean {
  switch (name) {
    case 'recovered':
      return work.recovered !== undefined;
    case 'testStart':
      return work.test !== undefined || work.held === true;
    case 'searched':
      return work.searched === true;
    case 'testEnd':
      return work.held === true;
    case 'evacuated':
      return work.microns !== undefined;
    case 'isolated':
      return work.isolatedAt !== undefined;
    case 'decay':
      return work.stood === true;
    case 'charged':
      return work.charged !== undefined;
  }
}

/** Ids of the steps that have come about. */
export function doneOfRefrigerant(work: RefrigerantWork): readonly string[] {
  return (Object.keys(PLAN) as RefrigerantStep[]).filter((name) => isDone(name, work)).map((name) => PLAN[name].id);
}

/** What the opened refrigerant circuit still wants, in order; parts that were passed are left out, and named when the visit closes. */
export function missingOfRefrigerant(context: VisitContext): readonly RefrigerantStep[] {
  if (!isRefrigerantOpened(context)) return [];
  return (Object.keys(PLAN) as RefrigerantStep[]).filter((name) => !isDone(name, context.refrigerantWork));
}

/**
 * The next step of an opened refrigerant circuit; `waiting` while a test has to stand; undefined where nothing is left. Power does
 * not go back before: a compressor is never run in vacuum.
 */
export function refrigerantStep(context: VisitContext): Step | 'waiting' | undefined {
  const passed = (name: RefrigerantStep) => context.parked.some((parked) => parked.step === PLAN[name].id);
  const name = missingOfRefrigerant(context).find((one) => !passed(one));
  if (name === undefined) return undefined;
  if (minutesLeft(name, context) > 0) return 'waiting';
  return PLAN[name];
}

/** While the repair goes on: out before the part goes in, and where the charge itself is the repair, all the rest behind it. */
export function refrigerantInRepair(context: VisitContext): Step | 'waiting' | undefined {
  const next = refrigerantStep(context);
  if (next !== PLAN.recovered && repairsMade(context).length === 0) return undefined;
  return next === 'waiting' || next === undefined ? next : { ...next, source: 'repair' };
}

/** Minutes until a standing test may be read. */
export function minutesLeft(name: RefrigerantStep, { refrigerantWork: work, now }: VisitContext): number {
  const began = name === 'testEnd' ? work.test?.mono : name === 'decay' ? work.isolatedAt : undefined;
  if (began === undefined) return 0;
  const minutes = REFRIGERANT_RULES[name === 'decay' ? 'decay' : 'pressure-test'].minutes;
  return Math.max(0, minutes - (now.mono - began) / MS_A_MINUTE);
}

/** The step that reads a test which has stood its time, whatever else is asked meanwhile; undefined where none has. */
export function stepThatStood(context: VisitContext): Step | undefined {
  const { test, held, isolatedAt, stood } = context.refrigerantWork;
  if (isolatedAt !== undefined && stood !== true) return minutesLeft('decay', context) > 0 ? undefined : PLAN.decay;
  if (test === undefined || held === true) return undefined;
  return minutesLeft('testEnd', context) > 0 ? undefined : PLAN.testEnd;
}

/** Minutes until the test that is standing now may be read; 0 where none is. */
export function minutesToStand(context: VisitContext): number {
  const [next] = missingOfRefrigerant(context);
  return next === undefined ? 0 : minutesLeft(next, context);
}

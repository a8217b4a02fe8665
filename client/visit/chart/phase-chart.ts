import { setup, transition } from 'xstate';
import type { Phase } from '../../../grammar/visit/events.ts';
import { REPAIR } from '../../../grammar/visit/evolve.ts';
import { isDeclined } from '../../../grammar/visit/standing.ts';
import { refrigerantStep } from '../rules/refrigerant-plan.ts';
import { isFresh, isSettled, openTests, readOnceMore } from '../steps/choose-step.ts';
import { ARRIVE_PLAN, PROVE_PLAN } from '../steps/plans.ts';
import type { Step, VisitContext } from './context.ts';

interface Seen {
  readonly context: VisitContext;
}

function isDone(plan: readonly Step[], context: VisitContext): boolean {
  return plan.every((step) => step.optional === true || isSettled(step, context));
}

/** What leads from one phase to the next, read from the facts when a turn is over. */
export const PHASE_GUARDS = {
  'customer declined': ({ context }: Seen) => isDeclined(context),
  'arrival answered': ({ context }: Seen) => isDone(ARRIVE_PLAN, context),
  'finding stated': ({ context }: Seen) => context.finding !== undefined,
  'nothing left to test': ({ context }: Seen) => isFresh(context) && !isMoreToTest(context),
  'more to test': ({ context }: Seen) => context.finding === undefined && isFresh(context) && isMoreToTest(context),
  'repair stands': ({ context }: Seen) => context.settled.includes(REPAIR),
  'repair to be proved': ({ context }: Seen) => context.settled.includes(REPAIR) && !isProved(context),
  'arrival to be answered': ({ context }: Seen) =>
    !context.settled.includes(REPAIR) && context.finding === undefined && !isDone(ARRIVE_PLAN, context),
  'search to go on': ({ context }: Seen) =>
    !context.settled.includes(REPAIR) &&
    context.finding === undefined &&
    !(isFresh(context) && context.assessment?.next.length === 0),
  'no repair stands': ({ context }: Seen) => !context.settled.includes(REPAIR),
  'repair proved': ({ context }: Seen) => isProved(context),
};

function isMoreToTest(context: VisitContext): boolean {
  return readOnceMore(context) !== undefined || openTests(context).length > 0;
}

function isProved(context: VisitContext): boolean {
  return isDone(PROVE_PLAN, context) && refrigerantStep(context) === undefined;
}

const phaseSetup = setup({
  types: { context: {} as VisitContext, events: {} as { readonly type: 'turn.over' }, input: {} as VisitContext },
  guards: PHASE_GUARDS,
});

/** A customer who declines ends the work from wherever it stands. */
const DECLINED = { guard: 'customer declined', target: 'close' } as const;
const REPAIRED = { guard: 'repair stands', target: 'prove' } as const;

/**
 * What the talk is about. Each phase knows by which facts it is over; nothing else moves it. Closed is not among them:
 * a closed visit takes nothing any more, and so it is a state of the visit itself.
 */
export const phaseChart = phaseSetup.createMachine({
  id: 'phase',
  context: ({ input }) => input,
  initial: 'arrive',
  states: {
    arrive: { on: { 'turn.over': [DECLINED, REPAIRED, { guard: 'arrival answered', target: 'testing' }] } },
    testing: {
      on: {
        'turn.over': [
          DECLINED,
          REPAIRED,
          { guard: 'finding stated', target: 'repair' },
          { guard: 'nothing left to test', target: 'repair' },
        ],
      },
    },
    repair: { on: { 'turn.over': [DECLINED, REPAIRED, { guard: 'more to test', target: 'testing' }] } },
    prove: {
      on: {
        'turn.over': [
          DECLINED,
          { guard: 'no repair stands', target: 'repair' },
          { guard: 'repair proved', target: 'close' },
        ],
      },
    },
    close: {
      on: {
        'turn.over': [
          { guard: 'customer declined' },
          // A customer who agrees after all takes the work up where its facts left it.
          { guard: 'arrival to be answered', target: 'arrive' },
          { guard: 'search to go on', target: 'testing' },
          { guard: 'no repair stands', target: 'repair' },
          { guard: 'repair to be proved', target: 'prove' },
        ],
      },
    },
  },
});

/** The phase that a visit is in when a turn is over. */
export function phaseAfter(chart: typeof phaseChart, context: VisitContext): Phase {
  if (context.phase === 'closed') return 'closed';
  const here = chart.resolveState({ value: context.phase, context });
  return transition(chart, here, { type: 'turn.over' })[0].value as Phase;
}

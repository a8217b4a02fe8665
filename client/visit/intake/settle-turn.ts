import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { isOpened, isolationOf } from '../rules/isolation.ts';
import { looseWires } from '../rules/landings.ts';
import { refrigerantStep } from '../rules/refrigerant-work.ts';
import { isSettled } from '../steps/choose-step.ts';
import { ARRIVE_PLAN, PROVE_PLAN } from '../steps/plans.ts';

/**
 * What every turn ends with: a step that is answered makes room, a phase with nothing left gives way to the next, the
 * diagnosis is asked for new evidence, and the next step is wanted.
 */
export function settleTurn(turn: Turn): void {
  const { context } = turn;
  if (context.phase === 'closed') return;
  if (context.askedFor !== context.evidenceNumber) turn.askDiagnosis();
  const { phase } = context;
  const done = (plan: readonly Step[]) => plan.every((step) => step.optional === true || isSettled(step, context));
  if (phase === 'arrive' && done(ARRIVE_PLAN)) turn.raise({ type: 'phase.go', to: 'testing' });
  if (phase === 'prove' && done(PROVE_PLAN) && refrigerantStep(context) === undefined)
    turn.raise({ type: 'phase.go', to: 'close' });
  turn.raise({ type: 'step.review' });
}

/** Whether what a step asks for has come about, by whatever way it came. Read after the energy region has settled. */
export function isAnswered(step: Step, context: VisitContext): boolean {
  if (step.ask.kind !== 'action') return isSettled(step, context);
  switch (step.ask.done) {
    case 'call-on':
      return context.call === 'cooling';
    case 'call-off':
      return context.call === 'none';
    case 'power-off':
      return step.zone !== 'none' && isolationOf(step.zone, context) === 'locked';
    case 'absence-proved':
      return step.zone !== 'none' && ['reads-dead', 'proven-dead'].includes(context.energy[step.zone]);
    case 'capacitors-discharged':
      return step.zone !== 'none' && context.energy[step.zone] === 'proven-dead';
    case 'part-fitted':
      return context.phase !== 'repair';
    case 'wires-landed':
      return looseWires(context.wires).length === 0;
    case 'tug-tested':
      return context.settled.includes('repair.tug-tested');
    case 'covers-on':
      return context.settled.includes('energy.covers-on');
    case 'power-on':
      return step.zone !== 'none' && !isOpened(step.zone, context);
    case 'consent-asked':
    case 'meter-named':
    case 'nameplate-read':
    case 'leak-searched':
    case 'vacuum-isolated':
    case 'thermostat-agreed':
    case 'recommended':
    case 'technician-signed':
    case 'customer-signed':
      return isSettled(step, context);
    case 'visit-finished':
      return context.phase === 'closed';
  }
}

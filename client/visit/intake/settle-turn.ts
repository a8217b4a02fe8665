import { wireMoves } from '../../../grammar/visit/standing.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { phaseAfter, phaseChart } from '../chart/phase-chart.ts';
import type { Turn } from '../chart/turn.ts';
import { isOpened, isolationOf, TAKEN_OFF } from '../rules/isolation.ts';
import { looseWires } from '../rules/landings.ts';
import { isSettled, minutesRunning, waitsForSplit } from '../steps/choose-step.ts';
import { waysGivenUp } from '../steps/given-up.ts';
import { SPLIT_AFTER_MINUTES } from '../steps/plans.ts';
import { isOver, isWanted } from '../steps/wanted-steps.ts';
import { leaveStillOff } from './ask-still-off.ts';
import { doubtUnreadSections } from './follow-charge.ts';
import { tellStuck } from './order-steps.ts';

/**
 * What every turn ends with: a phase that is over gives way to the next, the diagnosis is asked for new evidence, a
 * question that waited is put, and the step sees whether it is answered.
 */
export function settleTurn(turn: Turn): void {
  if (turn.context.phase === 'closed') return;
  doubtUnreadSections(turn);
  leaveStillOff(turn);
  openWays(turn);
  settlePhase(turn);
  if (turn.context.askedFor !== turn.context.evidenceNumber && !isPlateRead(turn.context)) turn.askDiagnosis();
  turn.putQuestion();
  tellRunIn(turn);
  tellStuck(turn);
  turn.raise({ type: 'step.review' });
  if (!turn.context.repeatsStep) return;
  turn.talk({ repeatsStep: false });
  turn.raise({ type: 'step.repeat' });
}

/** A way that was given up and that somebody went all the same is asked for again where it is wanted again. */
function openWays(turn: Turn): void {
  const gone = waysGivenUp(turn.context).filter((step) => isAnswered(step, turn.context));
  if (gone.length > 0) turn.record({ type: 'steps.settled', steps: [...new Set(gone.map(({ id }) => id))] });
}

/** While the plate is read each field makes another unit: its table waits until the last one. */
function isPlateRead({ phase, step }: VisitContext): boolean {
  return phase === 'arrive' && step?.plate !== undefined;
}

/** Where nothing can be asked before the unit has run its time: how long that is, and what to do meanwhile, once. */
function tellRunIn(turn: Turn): void {
  const { phase, runningSince, toldRunIn, questions, held, waits } = turn.context;
  if (waits) return;
  if (phase !== 'prove' || runningSince === undefined || toldRunIn === runningSince || questions.length > 0 || held)
    return;
  if (!waitsForSplit(turn.context)) return;
  turn.talk({ toldRunIn: runningSince });
  turn.callSplitTime();
  turn.say('answer', SAY.runIn(Math.ceil(SPLIT_AFTER_MINUTES - minutesRunning(turn.context))));
}

/** One phase may be over as soon as it begins. */
function settlePhase(turn: Turn): void {
  for (let phase = phaseAfter(phaseChart, turn.context); phase !== turn.context.phase; ) {
    turn.record({ type: 'phase.entered', phase });
    turn.talk({ wanted: undefined });
    phase = phaseAfter(phaseChart, turn.context);
  }
}

/** Whether what a step asks for has come about, by whatever way it came. Read after the energy region has settled. */
export function isAnswered(step: Step, context: VisitContext): boolean {
  if (isWanted(step, context) && !isOver(step, context)) return false;
  // What a proof, a search or a section still wants is seen in the facts: the step is out of place once it is read.
  if (step.ask.kind !== 'action') return isSettled(step, context);
  switch (step.ask.done) {
    case 'call-on':
      return context.call === 'cooling';
    case 'call-off':
      return context.call === 'none';
    case 'power-off':
      return (
        step.zone !== 'none' &&
        isolationOf(step.zone, context) === 'locked' &&
        TAKEN_OFF.includes(context.energy[step.zone])
      );
    case 'breaker-off':
      return context.isolation.panel === 'locked';
    case 'clamps-placed':
      return context.settled.includes('repair.clamps-placed');
    case 'disconnect-locked':
      return context.isolation.outdoor === 'locked';
    case 'source-opened':
      return context.search === undefined;
    case 'absence-proved':
    case 'meter-again':
      return step.zone !== 'none' && ['reads-dead', 'proven-dead'].includes(context.energy[step.zone]);
    case 'capacitors-discharged':
    case 'charge-left':
      return step.zone !== 'none' && context.energy[step.zone] === 'proven-dead';
    case 'part-fitted':
      return context.phase !== 'repair';
    case 'wires-landed':
      return looseWires(wireMoves(context)).length === 0;
    case 'tug-tested':
      return context.settled.includes('repair.tug-tested');
    case 'covers-on':
      return context.settled.includes('energy.covers-on');
    case 'power-on':
      return step.zone !== 'none' && !isOpened(step.zone, context);
    case 'consent-asked':
    case 'meter-named':
    case 'sound-agreed':
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

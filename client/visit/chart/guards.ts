import { isAnswered } from '../intake/settle-turn.ts';
import { isGrounded } from '../rules/after-trip.ts';
import { chooseStep, startsOpenCircuit, undoes } from '../steps/choose-step.ts';
import { pressingStep } from '../steps/dead-steps.ts';
import { holdBack } from '../steps/hold-back.ts';
import { isOver, isWanted } from '../steps/wanted-steps.ts';
import type { Step, VisitContext } from './context.ts';

interface Seen {
  readonly context: VisitContext;
}

/** An interlock stands between the step and its prompt. */
function heldBackBy(interlock: ReturnType<typeof holdBack>) {
  return ({ context }: Seen): boolean => context.step !== undefined && holdBack(context.step, context) === interlock;
}

function answered({ context }: Seen): boolean {
  return context.step !== undefined && isAnswered(context.step, context);
}

/** The visit has moved on: the step belongs to a phase that is past, or another must come before it now. */
function outOfPlace({ context }: Seen): boolean {
  const { step, phase } = context;
  if (step === undefined) return false;
  if (isWanted(step, context) && !isOver(step, context)) return chooseStep(context)?.id !== step.id;
  if (undoes(step, context)) return true;
  if (step.source === 'planner' && startsOpenCircuit(step.needs, context)) return true;
  if (step.source === 'energy' || pressingStep(context) !== undefined) {
    const now = chooseStep(context);
    // What was asked of a proof or a search is over with it, though nothing else is asked yet.
    // Nor is anything asked that leads to power on a grounded winding.
    if (now === undefined)
      return step.ask.kind === 'reading' || isOfProof(step) || isOverForPower(step, context) || isGrounded(context);
    return now.id !== step.id;
  }
  if (step.id.startsWith('refrigerant.') && chooseStep(context)?.id !== step.id) return true;
  // A refrigerant circuit that was opened meanwhile goes before the part.
  if (step.source === 'repair' && chooseStep(context)?.id.startsWith('refrigerant.') === true) {
    return chooseStep(context)?.id !== step.id;
  }
  return PHASE_OF[step.source] !== phase;
}

function isOfProof({ ask }: Step): boolean {
  return ask.kind === 'action' && (ask.done === 'meter-again' || ask.done === 'source-opened');
}

/** A proof or a discharge whose zone is fed again. */
function isOverForPower({ ask, zone }: Step, { energy }: VisitContext): boolean {
  if (ask.kind !== 'action' || zone === 'none') return false;
  if (ask.done === 'capacitors-discharged') return energy[zone] !== 'reads-dead';
  return ask.done === 'absence-proved' && energy[zone] === 'live';
}

const PHASE_OF = { arrive: 'arrive', planner: 'testing', repair: 'repair', prove: 'prove', close: 'close' } as const;

/** The interlocks and conditions of the step, by name: a test takes one away and sees the walk fail. */
export const GUARDS = {
  'hands-on without proof': heldBackBy('proof'),
  'caution due': heldBackBy('caution'),
  'supervisor due': heldBackBy('supervisor'),
  'supervisor there': ({ context }: Seen) => context.supervisor !== undefined,
  'step answered': answered,
  'step out of place': outOfPlace,
  'visit closed': ({ context }: Seen) => context.phase === 'closed',
};

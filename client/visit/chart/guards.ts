import type { Phase } from '../../../grammar/visit/events.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { isAnswered } from '../intake/settle-turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { chooseStep, undoes } from '../steps/choose-step.ts';
import { holdBack } from '../steps/hold-back.ts';
import type { VisitContext } from './context.ts';
import { isEnergyMessage, type MachineEvent } from './messages.ts';

interface Seen {
  readonly context: VisitContext;
  readonly event: MachineEvent;
}

/** An interlock stands between the step and its prompt. */
function heldBackBy(interlock: ReturnType<typeof holdBack>) {
  return ({ context }: Seen): boolean => context.step !== undefined && holdBack(context.step, context) === interlock;
}

function supervisorThere({ context }: Seen): boolean {
  return context.supervisor !== undefined;
}

function cautionWasSpoken({ context, event }: Seen): boolean {
  return event.type === 'mouth.finished' && event.prompt === context.caution?.prompt && event.outcome === 'spoken';
}

function cautionWasCut({ context, event }: Seen): boolean {
  return event.type === 'mouth.finished' && event.prompt === context.caution?.prompt && event.outcome === 'cut';
}

function answered({ context }: Seen): boolean {
  return context.step !== undefined && isAnswered(context.step, context);
}

/** The visit has moved on: the step belongs to a phase that is past, or another must come before it now. */
function outOfPlace({ context }: Seen): boolean {
  const { step, phase } = context;
  if (step === undefined) return false;
  if (undoes(step.needs, step.zone, context)) return true;
  if (step.source === 'energy') {
    const now = chooseStep(context);
    return now !== undefined && now.id !== step.id;
  }
  if (step.id.startsWith('refrigerant.') && chooseStep(context)?.id !== step.id) return true;
  // A refrigerant circuit that was opened meanwhile goes before the part.
  if (step.source === 'repair' && chooseStep(context)?.id.startsWith('refrigerant.') === true) {
    return chooseStep(context)?.id !== step.id;
  }
  return PHASE_OF[step.source] !== phase;
}

const PHASE_OF = { arrive: 'arrive', planner: 'testing', repair: 'repair', prove: 'prove', close: 'close' } as const;

/** A message about a zone's energy moves that zone alone. */
function concernsZone({ event }: Seen, params: { readonly zone: ZoneId }): boolean {
  return isEnergyMessage(event) && event.zone === params.zone;
}

function toPhase({ event }: Seen, params: { readonly phase: Phase }): boolean {
  return event.type === 'phase.go' && event.to === params.phase;
}

/** Power came back to a zone that was off. */
function powerCameBack({ context, event }: Seen): boolean {
  if (event.type !== 'energy.live') return false;
  const before = context.energy[event.zone];
  return before === 'reported-off' || IN_PROOF.includes(before);
}

/** The interlocks and conditions of the regions, by name: a test takes one away and sees the walk fail. */
export const GUARDS = {
  'concerns zone': concernsZone,
  'hands-on without proof': heldBackBy('proof'),
  'caution due': heldBackBy('caution'),
  'supervisor due': heldBackBy('supervisor'),
  'supervisor there': supervisorThere,
  'caution was spoken': cautionWasSpoken,
  'caution was cut': cautionWasCut,
  'step answered': answered,
  'step out of place': outOfPlace,
  'power came back': powerCameBack,
  'to phase': toPhase,
};

import type { Focus, Phase } from '../../../grammar/visit/events.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { isAnswered } from '../intake/settle-turn.ts';
import { cautionsFor, dueCautions } from '../rules/cautions-due.ts';
import { chooseStep, isProvenDead, needsDead, undoes } from '../steps/choose-step.ts';
import type { VisitContext } from './context.ts';
import { isEnergyMessage, type MachineEvent } from './messages.ts';

interface Seen {
  readonly context: VisitContext;
  readonly event: MachineEvent;
}

/** Hands or an ohmmeter would meet a zone that is not proven dead. The interlock: such a step is never prompted. */
function handsOnWithoutProof({ context }: Seen): boolean {
  return context.step !== undefined && needsDead(context.step.needs) && !isProvenDead(context.step.zone, context);
}

function cautionDue({ context }: Seen): boolean {
  return context.step !== undefined && dueCautions(context.step, context).length > 0;
}

/** A trainee's live step on a real visit wants a supervisor's acknowledgement first. */
function supervisorDue({ context }: Seen): boolean {
  const { step, role, supervisor } = context;
  return role === 'trainee' && supervisor === undefined && step !== undefined && cautionsFor(step).length > 0;
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
  // A circuit that was opened meanwhile goes before the part.
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

function toFocus({ event }: Seen, params: { readonly focus: Focus }): boolean {
  return event.type === 'focus.on' && event.focus === params.focus;
}

function toPace({ event }: Seen, params: { readonly pace: VisitContext['pace'] }): boolean {
  return event.type === 'talk.to' && event.pace === params.pace;
}

function toRole({ event }: Seen, params: { readonly role: VisitContext['role'] }): boolean {
  return event.type === 'role.is' && event.role === params.role;
}

function questionStandsOpen({ context }: Seen): boolean {
  return context.question !== undefined;
}

/** Power came back to a zone that was off. */
function powerCameBack({ context, event }: Seen): boolean {
  if (event.type !== 'energy.live') return false;
  const before = context.energy[event.zone];
  return before === 'reads-dead' || before === 'proven-dead' || before === 'reported-off';
}

/** The interlocks and conditions of the regions, by name: a test takes one away and sees the walk fail. */
export const GUARDS = {
  'concerns zone': concernsZone,
  'hands-on without proof': handsOnWithoutProof,
  'caution due': cautionDue,
  'supervisor due': supervisorDue,
  'supervisor there': supervisorThere,
  'caution was spoken': cautionWasSpoken,
  'caution was cut': cautionWasCut,
  'step answered': answered,
  'step out of place': outOfPlace,
  'question stands open': questionStandsOpen,
  'power came back': powerCameBack,
  'to phase': toPhase,
  'to focus': toFocus,
  'to pace': toPace,
  'to role': toRole,
};

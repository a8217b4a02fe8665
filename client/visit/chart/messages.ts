import type { Focus, Phase } from '../../../grammar/visit/events.ts';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';

/** Messages between the regions of the statechart; they never leave it and are never logged. */
export type InternalEvent =
  | { readonly type: 'energy.live'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.reported-off'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.proof-began'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.read-dead'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.proven-dead'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.doubted'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'phase.go'; readonly to: Phase }
  | { readonly type: 'step.wanted' }
  | { readonly type: 'step.offered' }
  /** The turn is over: let the current step see whether it is answered or no longer allowed. */
  | { readonly type: 'step.review' }
  | { readonly type: 'step.answered' }
  | { readonly type: 'step.set-aside' }
  | { readonly type: 'caution.acknowledged' }
  | { readonly type: 'caution.cut' }
  | { readonly type: 'question.asked' }
  | { readonly type: 'question.closed' }
  | { readonly type: 'talk.to'; readonly pace: 'brief' | 'full' }
  | { readonly type: 'role.is'; readonly role: 'technician' | 'trainee' }
  | { readonly type: 'focus.on'; readonly focus: Focus }
  | { readonly type: 'hold' }
  | { readonly type: 'go.on' };

export type MachineEvent = VisitInput | InternalEvent;

export type EnergyMessage = Extract<InternalEvent, { zone: ZoneId }>;

export function isEnergyMessage(event: MachineEvent): event is EnergyMessage {
  return event.type.startsWith('energy.');
}

import type { Phase } from '../../../grammar/visit/events.ts';
import type { HeardUtterance, VisitInput } from '../../../grammar/visit/inputs.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';

/** Messages between the regions of the statechart; they never leave it and are never logged. */
export type InternalEvent =
  | { readonly type: 'energy.live'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.reported-off'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.proof-began'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.read-dead'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.proven-dead'; readonly zone: ZoneId; readonly why: string }
  | { readonly type: 'energy.doubted'; readonly zone: ZoneId; readonly why: string }
  /** Nothing leads back to arrival. */
  | { readonly type: 'phase.go'; readonly to: Exclude<Phase, 'arrive'> }
  /** What was heard goes on after the regions have moved by what was found in it first. */
  | { readonly type: 'heard.goes-on'; readonly utterance: HeardUtterance }
  | { readonly type: 'step.wanted' }
  | { readonly type: 'step.offered' }
  /** The turn is over: let the current step see whether it is answered or no longer allowed. */
  | { readonly type: 'step.review' }
  | { readonly type: 'step.answered' }
  | { readonly type: 'step.set-aside' }
  | { readonly type: 'caution.acknowledged' }
  | { readonly type: 'trainee.opened' }
  | { readonly type: 'hold' }
  | { readonly type: 'go.on' };

export type MachineEvent = VisitInput | InternalEvent;

type EnergyMessage = Extract<InternalEvent, { zone: ZoneId }>;

export function isEnergyMessage(event: MachineEvent): event is EnergyMessage {
  return event.type.startsWith('energy.');
}

import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { Phase } from '../../../grammar/visit/events.ts';
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
  /** Nothing leads back to arrival. */
  | { readonly type: 'phase.go'; readonly to: Exclude<Phase, 'arrive'> }
  /** An input that ended a proof is taken after the regions have moved by that. */
  | { readonly type: 'input.goes-on'; readonly input: VisitInput }
  /** What was said in the same breath, judged after the regions have moved by what was said before it. */
  | { readonly type: 'meanings.left'; readonly meanings: readonly Meaning[] }
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

import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';

/** Messages from a turn to the step; they never leave the statechart and are never logged. */
export type InternalEvent =
  /** What was said in the same breath, judged after the step has heeded what was said before it. */
  | {
      readonly type: 'meanings.left';
      readonly meanings: readonly Meaning[];
      /** Whether the values of readings were read back before and said to be so. */
      readonly readings?: 'as heard' | 'confirmed' | 'digits settled';
    }
  /** A turn is over: let the current step see whether it is answered or no longer allowed, and the next be asked. */
  | { readonly type: 'step.review' }
  /** The step that is still asked is said again; where it has given way to another, that one was said. */
  | { readonly type: 'step.repeat' }
  | { readonly type: 'step.answered' }
  | { readonly type: 'step.set-aside' }
  | { readonly type: 'step.offered' }
  | { readonly type: 'caution.over' }
  | { readonly type: 'caution.cut' }
  | { readonly type: 'caution.again' }
  | { readonly type: 'caution.acknowledged' }
  | { readonly type: 'hold' }
  | { readonly type: 'go.on' };

export type MachineEvent = VisitInput | InternalEvent;

import type { Meaning, ReadAt } from '../phrases/meaning.ts';
import type { SwitchingDevice } from '../vocabulary/devices.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { UnitCode, Value } from '../vocabulary/quantities.ts';

/** A question put to the technician, and what is done with its answer. */
export type Question =
  | { readonly kind: 'teen-or-ty'; readonly reading: Reading; readonly options: readonly [number, number] }
  | { readonly kind: 'confirm-reading'; readonly reading: Reading; readonly why: string }
  /** A value that was said without its place. */
  | { readonly kind: 'which-place'; readonly value: Value; readonly unit?: UnitCode }
  /** A place that was named without its value: what may be read there. */
  | { readonly kind: 'what-value'; readonly of: readonly [ReadAt, ...ReadAt[]] }
  /** A switch that was told of without its place. */
  | { readonly kind: 'which-switch'; readonly state: 'open' | 'locked' | 'closed'; readonly device?: SwitchingDevice }
  /** Something was said beside a proof, and not understood: whether it stands is asked. */
  | { readonly kind: 'still-off'; readonly heard: string }
  /** Anything else that was understood with a doubt: taken at a yes. */
  | {
      readonly kind: 'confirm-meaning';
      readonly meaning: Meaning;
      readonly confirmed?: true;
      /** A yes is not enough: a note with the reason takes it. */
      readonly wants?: 'reason';
    };

/** How a question came to its end. `expired`: nobody answered, and the talk went on. */
export type QuestionEnd = 'answered' | 'expired' | 'withdrawn';

/** A question that stands open. They are put one after another; none takes the place of another. */
export interface OpenQuestion {
  readonly number: number;
  /** The number of the event by which it was asked. */
  readonly seq: number;
  readonly question: Question;
  readonly words: string;
}

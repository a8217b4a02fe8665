import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';

/** How a language says a value. */
export interface ValueSpeech {
  /** BCP 47: that of the `Language` it answers in. */
  readonly id: string;
  /** A number as it is usually said. */
  readonly number: (value: number) => string;
  /** Digit by digit, where there is doubt. */
  readonly digits: (value: number) => string;
  /** A number that is in words already and its unit, in the order they are said in. */
  readonly amount: (number: string, unit: UnitCode) => string;
  /** Ounces, as a scale shows them. */
  readonly weight: (ounces: number) => string;
  /** That a meter shows an open circuit. */
  readonly open: string;
}

/** How a language reads back what was measured. */
export interface Speech extends ValueSpeech {
  /** What was measured: its place, and the quantity where the place alone does not say which. */
  readonly measured: (reading: Reading) => string;
  /** What was measured and its value, both in words, as one sentence. */
  readonly readback: (measured: string, value: string, reading: Reading) => string;
}

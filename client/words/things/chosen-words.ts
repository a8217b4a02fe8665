import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import { UNIT_WORDS } from './value-words.ts';

/** A difference in Fahrenheit degrees, in those that are chosen; to a tenth. */
export function degreesChosen(fahrenheit: number, { temperature }: UnitChoice): number {
  return tenth(temperature === '[degF]' ? fahrenheit : fahrenheit / unitFor(temperature, 'difference')!.factor);
}

/** A value of the program's own in a unit of its quantity's base, in the unit that is chosen; to a tenth. */
export function pressureChosen(psi: number, { pressure }: UnitChoice): number {
  return tenth(psi / unitFor(pressure, 'pressure')!.factor);
}

/** A limit in psi, aloud: never more than it allows, and never less than it wants. Gauges show whole numbers. */
export function pressureLimitWords(psi: number, limit: 'most' | 'least', units: UnitChoice): string {
  const whole = (limit === 'most' ? Math.floor : Math.ceil)(pressureChosen(psi, units));
  return `${sayNumber(whole)} ${UNIT_WORDS[units.pressure]}`;
}

/** Degrees alone are those that are chosen: where Celsius is, what is Fahrenheit is said so. */
export function namingScale(words: string, { temperature }: UnitChoice): string {
  return temperature === '[degF]' ? words : words.replace(/\bdegrees\b(?! (?:Celsius|Fahrenheit))/g, FAHRENHEIT);
}

const FAHRENHEIT = 'degrees Fahrenheit';

/** A value in °F or psi that a table or a reckoning gave, in the unit that is chosen; others as they are. */
export function inChosenUnit(
  value: number,
  unit: UnitCode,
  isDifference: boolean,
  units: UnitChoice,
): { readonly value: number; readonly unit: UnitCode } {
  if (unit === '[psi]') return { value: pressureChosen(value, units), unit: units.pressure };
  if (unit !== '[degF]' || units.temperature === '[degF]') return { value, unit };
  const { factor, offset = 0 } = unitFor(units.temperature, 'temperature')!;
  return { value: tenth((value - (isDifference ? 0 : offset)) / factor), unit: units.temperature };
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

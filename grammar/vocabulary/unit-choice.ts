import type { QuantityId, UnitCode } from './quantities.ts';
import { USUAL_UNITS } from './units.ts';

export const TEMPERATURE_UNITS = ['[degF]', 'Cel'] as const;
export const PRESSURE_UNITS = ['[psi]', 'kPa'] as const;

/** In which units a technician reads: what a bare number means, and what the program itself says and shows. */
export interface UnitChoice {
  readonly temperature: (typeof TEMPERATURE_UNITS)[number];
  readonly pressure: (typeof PRESSURE_UNITS)[number];
}

/** As the trade reads it off where nothing else was chosen. */
export const USUAL_CHOICE: UnitChoice = { temperature: '[degF]', pressure: '[psi]' };

export const isUsualChoice = (choice: UnitChoice): boolean => isSameChoice(choice, USUAL_CHOICE);

export const isSameChoice = (one: UnitChoice, other: UnitChoice): boolean =>
  one.temperature === other.temperature && one.pressure === other.pressure;

/** The unit of a number that was said without one. */
export function bareUnit(quantity: QuantityId, choice: UnitChoice = USUAL_CHOICE): UnitCode {
  return chosenFor(quantity, choice) ?? USUAL_UNITS[quantity];
}

/** The same where a row of a table says its own unit: millivolts where a drop is read. */
export function bareUnitOf(
  row: { readonly quantity: QuantityId; readonly unit: UnitCode },
  choice: UnitChoice = USUAL_CHOICE,
): UnitCode {
  return chosenFor(row.quantity, choice) ?? row.unit;
}

/** What is chosen for a quantity; undefined for one of which there is no choice. */
export function chosenFor(quantity: QuantityId, choice: UnitChoice): UnitCode | undefined {
  switch (quantity) {
    case 'temperature':
    case 'wet-bulb':
    case 'difference':
      return choice.temperature;
    case 'pressure':
      return choice.pressure;
    default:
      return undefined;
  }
}

/** Every choice there is. */
export const UNIT_CHOICES: readonly UnitChoice[] = TEMPERATURE_UNITS.flatMap((temperature) =>
  PRESSURE_UNITS.map((pressure) => ({ temperature, pressure })),
);

/** A choice as it was kept or recorded; the usual one where it is missing or no choice. */
export function readUnitChoice(kept: unknown): UnitChoice {
  const { temperature, pressure } = (typeof kept === 'object' && kept !== null ? kept : {}) as Partial<UnitChoice>;
  return {
    temperature: TEMPERATURE_UNITS.find((unit) => unit === temperature) ?? USUAL_CHOICE.temperature,
    pressure: PRESSURE_UNITS.find((unit) => unit === pressure) ?? USUAL_CHOICE.pressure,
  };
}

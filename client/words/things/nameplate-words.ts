import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import { NAMEPLATE_FIELDS_BY_ID, type NameplateField } from '../../../grammar/vocabulary/nameplate.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { capital } from '../capital.ts';
import { valueWords } from './value-words.ts';

/** What a field of the nameplate is called. */
export function nameplateName(field: string): string {
  return nameIn(NAMEPLATE_FIELDS_BY_ID, field);
}

/** "Nameplate RLA, fifteen amps.": a field with its value, as a sentence. */
export function nameplateWords(field: string, value: number | string, unit?: UnitCode): string {
  return `Nameplate ${nameplateName(field)}, ${plateValue(field, value, unit)}.`;
}

/** "Fifteen amps.": where the field has just been asked for. */
export function askedPlateWords(field: string, value: number | string, unit?: UnitCode): string {
  return `${capital(plateValue(field, value, unit))}.`;
}

function plateValue(field: string, value: number | string, unit: UnitCode | undefined): string {
  if (typeof value === 'number') return unit === undefined ? sayNumber(value) : valueWords(value, unit);
  // Letters and digits are spelt out: as one word nobody hears whether they are right.
  return rowOf(field)?.value === 'mark' ? [...value].join(' ') : value;
}

const rowOf = (field: string): NameplateField | undefined =>
  (NAMEPLATE_FIELDS_BY_ID as Readonly<Record<string, NameplateField>>)[field];

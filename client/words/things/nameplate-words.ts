import { sayNumber } from '../../../grammar/phrases/numbers/say-number.ts';
import { NAMEPLATE_FIELDS_BY_ID } from '../../../grammar/vocabulary/nameplate.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { valueWords } from './value-words.ts';

/** What a field of the nameplate is called. */
export function nameplateName(field: string): string {
  return nameIn(NAMEPLATE_FIELDS_BY_ID, field);
}

/** "Nameplate RLA, fifteen amps.": a field with its value, as a sentence. */
export function nameplateWords(field: string, value: number | string, unit?: UnitCode): string {
  const name = nameplateName(field);
  const words = typeof value === 'number' ? (unit === undefined ? sayNumber(value) : valueWords(value, unit)) : value;
  return `Nameplate ${name}, ${words}.`;
}

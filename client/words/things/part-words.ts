import { sayNumber } from '../../../grammar/phrases/numbers/say-number.ts';
import { PART_RATINGS, PARTS_BY_ID } from '../../../grammar/vocabulary/parts.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { UNIT_WORDS, valueWords } from './value-words.ts';

/** "dual capacitor, herm 45 microfarads": a part with its ratings in words. */
export function partWords(part: string, ratings: Readonly<Record<string, number | string>>): string {
  const name = nameIn(PARTS_BY_ID, part);
  const rated = Object.entries(ratings).map(([id, value]) => ratingWords(id, value));
  return [name, ...rated].join(', ');
}

function ratingWords(id: string, value: number | string): string {
  if (typeof value === 'number' && id in UNIT_WORDS) return valueWords(value, id as UnitCode);
  const unit = PART_RATINGS.find((one) => one.id === id)?.unit;
  const said = typeof value === 'number' ? sayNumber(value) : value;
  const section = id === 'herm-uF' ? 'herm ' : id === 'fan-uF' ? 'fan ' : '';
  const unitWords = unit === undefined || unit === '1' ? id : unit in UNIT_WORDS ? UNIT_WORDS[unit as UnitCode] : unit;
  return `${section}${said} ${unitWords}`;
}

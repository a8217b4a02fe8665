import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import { PART_RATINGS, PARTS_BY_ID } from '../../../grammar/vocabulary/parts.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { UNIT_WORDS, valueWords } from './value-words.ts';

/** "dual capacitor, herm forty five, fan five, four forty volts": a part with its ratings in words. */
export function partWords(part: string, ratings: Readonly<Record<string, number | string>>): string {
  const name = nameIn(PARTS_BY_ID, part);
  const rated = Object.entries(ratings).map(([id, value]) => ratingWords(id, value));
  return [name, ...rated].join(', ');
}

function ratingWords(id: string, value: number | string): string {
  if (typeof value === 'number' && id in UNIT_WORDS) return valueWords(value, id as UnitCode);
  const unit = PART_RATINGS.find((one) => one.id === id)?.unit;
  const said = typeof value === 'number' ? sayNumber(value) : value;
  // A section of a capacitor has one unit.
  if (id === 'herm-uF' || id === 'fan-uF') return `${id === 'herm-uF' ? 'herm' : 'fan'} ${said}`;
  if (id === 'hp' && typeof value === 'number') return `${HORSE[value] ?? said} horse`;
  const unitWords = unit === undefined || unit === '1' ? id : unit in UNIT_WORDS ? UNIT_WORDS[unit as UnitCode] : unit;
  return `${said} ${unitWords}`;
}

/** How the trade says a small motor's power, common practice. */
const HORSE: Readonly<Record<number, string>> = {
  0.125: 'eighth',
  0.167: 'sixth',
  0.17: 'sixth',
  0.2: 'fifth',
  0.25: 'quarter',
  0.33: 'third',
  0.333: 'third',
  0.5: 'half',
  0.75: 'three quarter',
};

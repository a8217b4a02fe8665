import { PARTS_BY_ID, RATINGS_BY_ID } from '../../../grammar/vocabulary/parts.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { UNITS_BY_CODE } from '../../../grammar/vocabulary/units.ts';
import { valueWords } from '../things/value-words.ts';
import { showUnit } from './show-reading.ts';

/** "dual capacitor, herm 45 µF, fan 5 µF, 440 V": a part with its ratings in digits; weights as people weigh. */
export function showPart(part: string, ratings: Readonly<Record<string, number | string>>): string {
  const rated = Object.entries(ratings).map(([id, value]) => showRating(id, value));
  return [nameIn(PARTS_BY_ID, part), ...rated].join(', ');
}

function showRating(id: string, value: number | string): string {
  if (typeof value === 'string') return `${id} ${value}`;
  // What was weighed in bears its unit as its name.
  if (Object.hasOwn(UNITS_BY_CODE, id)) return valueWords(value, id as UnitCode);
  const sign = SIGNS[id] ?? signOf(id);
  const section = id === 'herm-uF' ? 'herm ' : id === 'fan-uF' ? 'fan ' : '';
  return `${section}${value} ${sign}${id === 'coil-volts' ? ' coil' : ''}`;
}

/** Of ratings that have no unit of their own. */
const SIGNS: Readonly<Record<string, string>> = {
  uF: 'µF',
  va: 'VA',
  hp: 'hp',
  rpm: 'rpm',
  poles: 'poles',
  tons: 'tons',
};

function signOf(id: string): string {
  const unit = Object.hasOwn(RATINGS_BY_ID, id) ? RATINGS_BY_ID[id as keyof typeof RATINGS_BY_ID].unit : id;
  return showUnit(unit as UnitCode);
}

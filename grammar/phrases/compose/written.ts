import { NAMEPLATE_FIELDS, type NameplateField } from '../../vocabulary/nameplate.ts';
import { PARTS, type PartRatingId } from '../../vocabulary/parts.ts';
import type { Meaning } from '../meaning.ts';
import { type Draft, sure, unless } from './draft.ts';
import { numbersOf, type Segment, unbroken } from './segment.ts';

/** A line of the nameplate. */
export function composeNameplate(segment: Segment): Draft[] {
  const named = segment.items.find((item) => item.tag === 'field');
  const field = NAMEPLATE_FIELDS.find((row) => row.id === named?.field);
  if (field === undefined) return [];
  const said = segment.items.some((item) => item.tag === 'nameplate');
  if (!said && !('alone' in field)) return [];
  const choice = segment.items.find((item) => item.tag === 'choice');
  if (choice !== undefined) return sure({ kind: 'nameplate', field: field.id, value: choice.value });
  const numbers = numbersOf(segment.items);
  const units = segment.items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  const fieldUnit = 'unit' in field ? field.unit : undefined;
  const unit = units[0] ?? fieldUnit;
  if (units.length > 0 && fieldUnit !== undefined && units[0] !== fieldUnit) return [];
  const [first, second] = numbers;
  if (first === undefined || (second !== undefined && field.value !== 'number-or-pair')) return [];
  const value = second === undefined ? first.number.value : `${first.number.value}/${second.number.value}`;
  const { low, high }: NameplateField = field;
  const possible = numbers.every(({ number }) => number.value >= (low ?? 0) && number.value <= (high ?? 10_000));
  const meaning: Meaning = { kind: 'nameplate', field: field.id, value, ...(unit && { unit }) };
  if (!possible) return [{ meaning, cost: 2, doubt: 'implausible' }];
  return unless(unbroken(numbers), meaning);
}

/** A part that was fitted, with its ratings. "45 over 5" makes a capacitor a dual one. */
export function composePart(segment: Segment): Draft[] {
  const named = segment.items.find((item) => item.tag === 'part');
  if (named === undefined) return [];
  const ratings: Partial<Record<PartRatingId, number>> = {};
  let waiting: number[] = [];
  for (const item of segment.items) {
    if (item.tag === 'said') waiting.push(item.number.value);
    if (item.tag !== 'rating') continue;
    const [first, second] = waiting;
    waiting = [];
    if (second === undefined) ratings[item.rating] = first!;
    else if (item.rating !== 'uF') return [];
    else Object.assign(ratings, { 'herm-uF': first, 'fan-uF': second });
  }
  const part = named.part === 'capacitor' && ratings['fan-uF'] !== undefined ? 'dual-capacitor' : named.part;
  const known: readonly string[] = PARTS.find((row) => row.id === part)!.ratings;
  if (Object.keys(ratings).some((rating) => !known.includes(rating))) return [];
  const clean = unbroken(numbersOf(segment.items));
  return unless(clean, { kind: 'part', part, ratings });
}

/** A wire that is lifted or landed, a jumper that is put on or taken off. */
export function composeWire(segment: Segment): Draft[] {
  const action = segment.items.find((item) => item.tag === 'wire');
  if (action === undefined) return [];
  const wire: { colour?: string; size?: string; from?: string; to?: string } = {};
  let ends: readonly string[] = [];
  for (const item of segment.items) {
    if (item.tag === 'colour') wire.colour = item.colour;
    else if (item.tag === 'size') wire.size = item.size;
    else if (item.tag === 'tip') ends = item.points;
    else if (item.tag === 'end' && ends[0] !== undefined) wire[item.end] = ends[0];
  }
  return sure({ kind: 'wire', wire: { ...wire, action: action.action } });
}

/** Refrigerant put in or taken out, by weight in ounces where both units are said; taken out is negative. */
export function composeMass(segment: Segment): Draft[] {
  const numbers = numbersOf(segment.items);
  const units = segment.items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  const [first, second] = numbers;
  const [unit] = units;
  if (first === undefined || unit === undefined) return [];
  const sign = segment.items.some((item) => item.tag === 'out') ? -1 : 1;
  const value = second === undefined ? first.number.value : first.number.value * 16 + second.number.value;
  return unless(unbroken(numbers), {
    kind: 'reading',
    reading: {
      quantity: 'mass',
      at: ['system'],
      value: sign * value,
      unit: second === undefined ? unit : '[oz_av]',
    },
  });
}

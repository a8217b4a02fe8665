import {
  bareUnitOfField,
  inUnitOfField,
  NAMEPLATE_FIELDS_BY_ID,
  type NameplateField,
  type NameplateFieldId,
  PLATE_LINES,
} from '../../vocabulary/nameplate.ts';
import { PARTS_BY_ID, type PartRatingId, RATINGS_BY_ID } from '../../vocabulary/parts.ts';
import type { UnitCode } from '../../vocabulary/quantities.ts';
import type { UnitChoice } from '../../vocabulary/unit-choice.ts';
import { UNITS_BY_CODE } from '../../vocabulary/units.ts';
import type { Expectation, Meaning } from '../meaning.ts';
import { type Draft, sure, unless } from './draft.ts';
import { unitsSaid } from './said-value.ts';
import { numbersOf, type SaidNumber, type Segment, unbroken } from './segment.ts';

/** A line of the nameplate. */
export function composeNameplate(segment: Segment, choice: UnitChoice | undefined): Draft[] {
  const fields = segment.items.filter((item) => item.tag === 'field');
  if (fields.length === 2)
    return composeRatedPair(
      segment,
      fields.map((item) => item.field),
    );
  const named = segment.items.find((item) => item.tag === 'field');
  if (named === undefined) return [];
  const chosen = segment.items.find((item) => item.tag === 'choice');
  if (chosen !== undefined) {
    const volts = chosen.value.includes('/') && { unit: 'V' as const };
    return sure({ kind: 'nameplate', field: named.field, value: chosen.value, ...volts });
  }
  return composeField(named.field, segment, choice);
}

/** A charge of fewer is one of pounds (common practice: two pounds and more for each ton). */
const LEAST_OUNCES = 32;

/** The number of a field, with its unit. */
function composeField(id: NameplateFieldId, segment: Segment, choice: UnitChoice | undefined): Draft[] {
  const field = NAMEPLATE_FIELDS_BY_ID[id];
  const numbers = numbersOf(segment.items);
  const units = unitsSaid(segment.items, choice);
  const amount = amountOf(field, numbers, units, choice);
  if (amount === undefined) return [];
  const { odd, ...said } = amount;
  const possible = numbers.every(({ number }) =>
    isPossible(field, number.value, units.length > 1 ? undefined : said.unit),
  );
  const meaning: Meaning = { kind: 'nameplate', field: id, ...said };
  if (odd || !possible) return [{ meaning, cost: 2, doubt: 'implausible' }];
  const isCharge = field.unit === '[oz_av]';
  const lacksPounds = isCharge && units.length === 0 && numbers.some(({ number }) => number.value < LEAST_OUNCES);
  return unless(unbroken(numbers) && !lacksPounds && !(isCharge && isSpelt(numbers)), meaning);
}

/**
 * A number without a name while the plate is read: by its unit, or of the line that is asked.
 *
 * @param fields what is still to be read, the fields of the asked line first
 */
export function composePlateNumbers(
  segment: Segment,
  fields: readonly NameplateFieldId[],
  choice: UnitChoice | undefined,
): Draft[] {
  const [asked] = fields;
  const numbers = numbersOf(segment.items);
  if (asked === undefined) return [];
  if (numbers.length === 2) {
    const isVolts =
      fields.includes('supply-volts') && numbers.every(({ number }) => isWithin('supply-volts', number.value));
    const pair = segment.items.find((item) => item.tag === 'pair')?.of;
    if (pair === 'line') return composeLine(segment, fields);
    if (isVolts) return composeField('supply-volts', segment, choice);
    return SECTIONS.every((section) => fields.includes(section)) ? composeRatedPair(segment, SECTIONS) : [];
  }
  const both = sectionsInOne(numbers, asked, fields);
  if (both !== undefined) return both;
  const units = segment.items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  const line = PLATE_LINES.find((one: readonly NameplateFieldId[]) => one.includes(asked)) ?? [];
  const field = fields.find((id) => {
    const { value, unit } = NAMEPLATE_FIELDS_BY_ID[id];
    if (!value.startsWith('number')) return false;
    const isAsked = (line as readonly NameplateFieldId[]).includes(id);
    return units.length === 0
      ? isAsked
      : units.some((said) => isOfField(said, unit)) && (isAsked || id === 'supply-volts');
  });
  return field === undefined ? [] : composeField(field, segment, choice);
}

/** "Forty five five" where both sections are asked for: no capacitor is made for 45.5 microfarads (common practice). */
function sectionsInOne(
  [said]: readonly SaidNumber[],
  asked: NameplateFieldId,
  fields: readonly NameplateFieldId[],
): Draft[] | undefined {
  if (said?.number.form !== 'pointless' || asked !== SECTIONS[0] || !fields.includes(SECTIONS[1])) return undefined;
  const herm = Math.floor(said.number.value);
  const values = [herm, Math.round((said.number.value - herm) * 10)];
  const parts = SECTIONS.map(
    (field, index): Meaning => ({ kind: 'nameplate', field, value: values[index]!, unit: 'uF' }),
  );
  return sure({ kind: 'several', parts });
}

/** Two numbers of the line that is asked, in its order; each may stand there, and the second is another quantity's no unit. */
function composeLine(segment: Segment, fields: readonly NameplateFieldId[]): Draft[] {
  const [asked] = fields;
  const line: readonly NameplateFieldId[] =
    PLATE_LINES.find((one: readonly NameplateFieldId[]) => asked !== undefined && one.includes(asked)) ?? [];
  const open = line.filter((id) => fields.includes(id));
  const numbers = numbersOf(segment.items);
  const said = segment.items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  if (open.length !== 2 || open.length !== numbers.length) return [];
  const parts = open.map((field, index): Meaning => {
    const { unit } = NAMEPLATE_FIELDS_BY_ID[field];
    return { kind: 'nameplate', field, value: numbers[index]!.number.value, ...(unit && { unit }) };
  });
  const fits = open.every((id, index) => {
    const { value, unit } = NAMEPLATE_FIELDS_BY_ID[id];
    return value === 'number' && said.every((one) => one === unit) && isWithin(id, numbers[index]!.number.value);
  });
  return fits ? unless(unbroken(numbers), { kind: 'several', parts }) : [];
}

const SECTIONS = ['capacitor-herm', 'capacitor-fan'] as const;

function isWithin(id: NameplateFieldId, value: number): boolean {
  return isPossible(NAMEPLATE_FIELDS_BY_ID[id], value, undefined);
}

/** Whether a plate can say so: its limits hold whichever unit the number is in. */
function isPossible(field: NameplateField, value: number, unit: UnitCode | undefined): boolean {
  const { low = 0, high = 10_000 } = field;
  const here = inUnitOfField(field, value, unit);
  return here >= low && here <= high;
}

const isOfField = (said: UnitCode, unit: UnitCode | undefined): boolean =>
  unit !== undefined && UNITS_BY_CODE[said].base === UNITS_BY_CODE[unit].base;

/** What means a line of the plate only while it is read: a refrigerant by its number, volts or sections without a name. */
export function composePlateAnswer(
  segment: Segment,
  fields: readonly NameplateFieldId[],
  choice: UnitChoice | undefined,
): Draft[] {
  const chosen = segment.items.find((item) => item.tag === 'choice');
  if (chosen === undefined) return composePlateNumbers(segment, fields, choice);
  if (chosen.value.includes('/')) {
    const meaning: Meaning = { kind: 'nameplate', field: 'supply-volts', value: chosen.value, unit: 'V' };
    return fields.includes('supply-volts') ? sure(meaning) : [];
  }
  return fields.includes('refrigerant') ? sure({ kind: 'nameplate', field: 'refrigerant', value: chosen.value }) : [];
}

/** "forty five over five" on a nameplate: a line for each section. */
function composeRatedPair(segment: Segment, fields: readonly NameplateFieldId[]): Draft[] {
  const numbers = numbersOf(segment.items);
  const units = segment.items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  if (numbers.length !== 2 || units.some((unit) => unit !== 'uF')) return [];
  const parts = numbers.map(({ number }, index): Meaning => {
    return { kind: 'nameplate', field: fields[index]!, value: number.value, unit: 'uF' };
  });
  const possible = numbers.every(({ number }) => number.value > 0 && number.value <= 120);
  const meaning: Meaning = { kind: 'several', parts };
  return possible ? unless(unbroken(numbers), meaning) : [{ meaning, cost: 2, doubt: 'implausible' }];
}

/** One number, two where the field has two ("208/230"), or pounds and ounces; odd where they are not the field's. */
function amountOf(
  field: NameplateField,
  numbers: readonly SaidNumber[],
  units: readonly UnitCode[],
  choice: UnitChoice | undefined,
): { value: number | string; unit?: UnitCode; odd: boolean } | undefined {
  const [first, second] = numbers;
  if (first === undefined) return undefined;
  const unit = units[0] ?? bareUnitOfField(field, choice);
  const withUnit = unit === undefined ? {} : { unit };
  const foreign = units.some(
    (said) => field.unit === undefined || UNITS_BY_CODE[said].base !== UNITS_BY_CODE[field.unit].base,
  );
  if (second === undefined) return { value: first.number.value, ...withUnit, odd: foreign };
  if (!foreign && units[0] === '[lb_av]' && units[1] === '[oz_av]') {
    return { value: first.number.value * 16 + second.number.value, unit: '[oz_av]', odd: false };
  }
  const odd = foreign || field.value !== 'number-or-pair' || units.length > 1;
  return { value: `${first.number.value}/${second.number.value}`, ...withUnit, odd };
}

/** A part that was fitted, with its ratings. "45 over 5" makes a capacitor a dual one. */
export function composePart(segment: Segment): Draft[] {
  const named = segment.items.find((item) => item.tag === 'part');
  if (named === undefined) return [];
  const ratings: Partial<Record<PartRatingId, number>> = {};
  let waiting: number[] = [];
  let odd = false;
  for (const item of segment.items) {
    if (item.tag === 'said') waiting.push(item.number.value);
    if (item.tag !== 'rating') continue;
    const [first, second] = waiting;
    waiting = [];
    odd ||= ratings[item.rating] !== undefined || (second !== undefined && item.rating !== 'uF');
    if (second === undefined) ratings[item.rating] = first!;
    else Object.assign(ratings, { 'herm-uF': first, 'fan-uF': second });
  }
  const part = named.part === 'capacitor' && ratings['fan-uF'] !== undefined ? 'dual-capacitor' : named.part;
  const known: readonly string[] = PARTS_BY_ID[part].ratings;
  odd ||= Object.entries(ratings).some(
    ([rating, value]) => !known.includes(rating) || value <= 0 || value > RATINGS_BY_ID[rating as PartRatingId].high,
  );
  const meaning: Meaning = { kind: 'part', part, ratings };
  if (odd) return [{ meaning, cost: 2, doubt: 'implausible' }];
  const isOfBoard = part === 'fuse' && (ratings.amps ?? LEAST_LINE_FUSE) < LEAST_LINE_FUSE;
  return unless(unbroken(numbersOf(segment.items)) && !isOfBoard, meaning);
}

/** Amps: a fuse of fewer protects a control board (common practice: 3 or 5), none a line. */
const LEAST_LINE_FUSE = 10;

/**
 * Refrigerant put in or taken out, by weight in ounces where both units are said; taken out is negative. A weight alone
 * answers the step that asks for one, which knows the way it went; else it is asked.
 */
export function composeMass(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const numbers = numbersOf(segment.items);
  const units = segment.items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  const [first, second] = numbers;
  const [said] = units;
  if (first === undefined || said === undefined) return [];
  const sign = segment.items.some((item) => item.tag === 'out') ? -1 : 1;
  const value = second === undefined ? first.number.value : first.number.value * 16 + second.number.value;
  const unit = second === undefined ? said : '[oz_av]';
  const clean = unbroken(numbers) && !isSpelt(numbers);
  const reading: Meaning = {
    kind: 'reading',
    reading: { quantity: 'mass', at: ['system'], value: sign * value, unit },
  };
  if (segment.items.some((item) => item.tag === 'into' || item.tag === 'out')) return unless(clean, reading);
  return isWeightAsked(expectation)
    ? unless(clean, { kind: 'value', value, unit })
    : [{ meaning: reading, cost: 0, doubt: clean ? 'several-values-fit' : 'needed-repair' }];
}

/** Whether the one reading that is expected is a weight. */
export function isWeightAsked(expectation: Expectation | undefined): boolean {
  const [only, ...others] = expectation?.readings ?? [];
  return others.length === 0 && only?.quantity === 'mass';
}

/** "one two ounces": between digits under a hundred a unit may have been lost. */
function isSpelt(numbers: readonly SaidNumber[]): boolean {
  return numbers.some(({ number }) => number.form === 'digits' && number.value < 100 && number.value >= 10);
}

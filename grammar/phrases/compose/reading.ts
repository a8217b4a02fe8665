import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import type { Reading } from '../../vocabulary/measurement.ts';
import { PLACES, type PlaceId } from '../../vocabulary/places.ts';
import { POINTS, type Point, type PointId } from '../../vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../vocabulary/quantities.ts';
import { UNITS, type Unit } from '../../vocabulary/units.ts';
import type { Expectation, UnclearReason } from '../meaning.ts';
import { readNumber } from '../numbers/read-number.ts';
import { twinOf, twinOfNumeral } from '../numbers/twins.ts';
import type { Draft } from './draft.ts';
import type { Item, SaidNumber, Segment } from './segment.ts';

const unitRows: readonly Unit[] = UNITS;
const order = new Map<PointId, number>(POINTS.map((point, index) => [point.id, index]));
const pointRows = new Map<PointId, Point>(POINTS.map((point) => [point.id, point]));

/** The two tips in the order of the points table. */
export const inOrder = (at: readonly PointId[]): PointId[] => [...at].sort((a, b) => order.get(a)! - order.get(b)!);

const pairKey = (at: readonly PointId[]): string => inOrder(at).join(' ');
const rowsOfPair = new Map<string, Measurand[]>();
for (const row of MEASURANDS) {
  if (row.onlyByName) continue;
  const key = pairKey(row.at);
  rowsOfPair.set(key, [...(rowsOfPair.get(key) ?? []), row]);
}

/** What was said of a value, taken from a segment's items. */
export interface Said {
  readonly value: Value;
  readonly words: readonly string[];
  readonly number?: SaidNumber;
  readonly range?: { readonly low: number; readonly high: number };
  readonly peak?: true;
  readonly tone?: true;
  readonly nothing?: true;
  readonly doubt?: UnclearReason;
  readonly units: readonly UnitCode[];
  /** What the spoken unit measures; empty where none was said. */
  readonly of: readonly QuantityId[];
}

/** The value of a segment: a number, a range, or a word that stands for one. */
export function saidValue(items: readonly Item[]): Said | undefined {
  const numbers = items.filter((item) => item.tag === 'said');
  const moving = items.find((item) => item.tag === 'moving');
  const word = items.find((item) => item.tag === 'value');
  const units = items.flatMap((item) => (item.tag === 'unit' ? [item.unit] : []));
  const of = items.find((item) => item.tag === 'unit')?.of ?? [];
  const clean = numbers.every((number) => number.clean);
  const doubt = clean ? {} : { doubt: 'needed-repair' as const };
  const [first, second] = numbers;
  if (moving?.how === 'range' && first && second) {
    const low = Math.min(first.number.value, second.number.value);
    const high = Math.max(first.number.value, second.number.value);
    return { value: (low + high) / 2, words: [], range: { low, high }, doubt: 'several-values-fit', units, of };
  }
  if (first !== undefined) {
    const peak = moving === undefined ? {} : { peak: true as const, doubt: 'several-values-fit' as const };
    return { value: first.number.value, words: first.words, number: first, units, of, ...doubt, ...peak };
  }
  switch (word?.is) {
    case 'zero':
      return { value: 0, words: [], units, of };
    case 'nothing':
      return { value: 0, words: [], units, of, nothing: true };
    case 'open':
      return { value: 'open', words: [], units, of };
    case 'tone':
      return { value: 0, words: [], units, of, tone: true };
    case 'shorted':
      return { value: 0, words: [], units, of, tone: true, doubt: 'several-values-fit' };
    default:
      return undefined;
  }
}

/** What a segment may have been read on: rows of the table, best known first. */
export function rowsSaid(items: readonly Item[]): Measurand[] {
  const named = items.find((item) => item.tag === 'named');
  const tips = items.filter((item) => item.tag === 'tip');
  const places = items.flatMap((item) => (item.tag === 'place' ? [item.place] : []));
  let rows: Measurand[] = [];
  if (named !== undefined) rows = named.rows.map((index) => MEASURANDS[index]!);
  else if (tips.length === 2) rows = rowsOfTips(tips[0]!.points, tips[1]!.points);
  else if (tips.length === 1) rows = rowsOfTips(tips[0]!.points, ['ground']);
  const [place] = places;
  if (place === undefined) return rows;
  return rows.filter((row) => row.at.some((point) => stands(point, place)));
}

function rowsOfTips(first: readonly PointId[], second: readonly PointId[]): Measurand[] {
  const rows = new Set<Measurand>();
  for (const one of first) {
    for (const other of second) for (const row of rowsOfPair.get(pairKey([one, other])) ?? []) rows.add(row);
  }
  return MEASURANDS.filter((row) => rows.has(row));
}

function stands(point: PointId, place: PlaceId): boolean {
  const at = pointRows.get(point)?.place;
  const within: readonly PlaceId[] = PLACES.find((row) => row.id === place)!.within;
  return at === place || (at !== undefined && within.includes(at));
}

/** `value` in the unit of the row; undefined where the units do not measure the same. */
function inUnitOf(row: Measurand, value: number, unit: UnitCode): number | undefined {
  const from = unitRows.find((candidate) => candidate.code === unit);
  const to = unitRows.find((candidate) => candidate.code === row.unit);
  if (from === undefined || to === undefined || from.base !== to.base) return undefined;
  if (!from.quantities.includes(row.quantity)) return undefined;
  const offset = (of: Unit): number => (row.quantity === 'difference' ? 0 : (of.offset ?? 0));
  return (value * from.factor + offset(from) - offset(to)) / to.factor;
}

export type Fit = 'likely' | 'possible' | 'impossible';
const RARE = 0.8;
const FIT_COST: Readonly<Record<Fit, number>> = { likely: 0, possible: 1, impossible: 3 };

function fitOf(row: Measurand, value: Value, unit: UnitCode): Fit {
  if (value === 'open') return row.open ? 'likely' : 'impossible';
  const here = inUnitOf(row, value, unit);
  if (here === undefined || here < row.low || here > row.high) return 'impossible';
  return row.likely.some(([low, high]) => here >= low && here <= high) ? 'likely' : 'possible';
}

/** Points of the same letters at another place count as one family: the first of the table is meant if nothing is said. */
const family = (row: Measurand): string =>
  `${row.quantity} ${row.at.map((point) => point.replace(/@.*$/, '').replace(/^handler-/, '')).join(' ')}`;

const isExpected = (row: Measurand, expectation: Expectation | undefined): boolean =>
  expectation?.readings.some((one) => one.quantity === row.quantity && pairKey(one.at) === pairKey(row.at)) ?? false;

/** The readings that a segment may mean, in any order. */
export function composeReading(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = saidValue(segment.items);
  if (said === undefined) return [];
  const bench = segment.items.some((item) => item.tag === 'bench');
  const placed = segment.items.some((item) => item.tag === 'place');
  const rows = rowsSaid(segment.items);
  const rare = !placed && rows.some((row) => !row.rare);
  return draftsOf(rows, said, bench, expectation).map((draft) =>
    rare && draft.row?.rare ? { ...draft, cost: draft.cost + RARE } : draft,
  );
}

/** One draft for each row that the value may belong to; other places of the same family are left out. */
export function draftsOf(
  rows: readonly Measurand[],
  said: Said,
  bench: boolean,
  expectation: Expectation | undefined,
): Draft[] {
  const measurable = rows.filter(
    (row) =>
      (said.of.length === 0 || said.of.includes(row.quantity)) &&
      said.units.every((unit) => inUnitOf(row, 0, unit) !== undefined) &&
      (!said.tone || row.quantity === 'resistance') &&
      (!bench || row.quantity === 'resistance' || row.quantity === 'capacitance'),
  );
  const expected = measurable.filter((row) => isExpected(row, expectation));
  const best = new Map<string, Measurand>();
  for (const row of [...expected, ...measurable]) if (!best.has(family(row))) best.set(family(row), row);
  return [...best.values()].map((row) => draftOf(row, said, bench, expected.includes(row)));
}

function draftOf(row: Measurand, said: Said, bench: boolean, expected: boolean): Draft {
  const unit = said.units[0] ?? row.unit;
  const value = said.nothing && row.open ? 'open' : said.value;
  const fit = fitOf(row, value, unit);
  const reading: Reading = {
    quantity: row.quantity,
    at: row.at,
    value,
    unit,
    ...(row.gauge && { gauge: true as const }),
    ...(said.range && { range: said.range }),
    ...(said.peak && { peak: true as const }),
    ...(said.tone && { tone: true as const }),
    ...(bench && { bench: true as const }),
  };
  const cost = FIT_COST[fit] + (expected ? 0 : 0.6);
  const twin = doubtfulTwin(row, said, unit, fit);
  const doubt = doubtOf(row, said, unit, fit, twin);
  return {
    meaning: { kind: 'reading', reading },
    row,
    cost,
    ...(doubt && { doubt }),
    ...(twin !== undefined && { twin }),
  };
}

function doubtOf(
  row: Measurand,
  said: Said,
  unit: UnitCode,
  fit: Fit,
  twin: number | undefined,
): UnclearReason | undefined {
  if (said.doubt !== undefined) return said.doubt;
  if (swallowed(row, said, unit)) return 'several-values-fit';
  if (twin !== undefined) return 'teen-or-ty';
  if (fit === 'impossible') return 'implausible';
  if (said.nothing && row.open) return 'several-values-fit';
  return undefined;
}

/**
 * The twin of a teen or ty, where it must be asked for: both fit equally well, or only the twin does. Where the value
 * fits better than its twin it is taken.
 */
function doubtfulTwin(row: Measurand, said: Said, unit: UnitCode, fit: Fit): number | undefined {
  if (typeof said.value !== 'number' || said.number === undefined) return undefined;
  const twin = said.number.number.form === 'numeral' ? twinOfNumeral(said.value) : twinOf(said.words);
  if (twin === undefined) return undefined;
  const other = fitOf(row, twin, unit);
  return other !== 'impossible' && FIT_COST[other] <= FIT_COST[fit] ? twin : undefined;
}

/**
 * "leg one eighteen": the digit of the place may be the first digit of the value, one of two that ran together. True
 * where the value would fit as well with that digit before it.
 */
function swallowed(row: Measurand, said: Said, unit: UnitCode): boolean {
  const digit = said.number?.after;
  if (digit === undefined || !['one', 'two'].includes(digit) || said.words.length === 0) return false;
  const longer = readNumber([digit, ...said.words]);
  if (longer?.form !== 'pair') return false;
  return fitOf(row, longer.value, unit) !== 'impossible';
}

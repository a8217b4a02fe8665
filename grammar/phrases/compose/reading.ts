import type { Measurand } from '../../vocabulary/measurands.ts';
import type { Reading } from '../../vocabulary/measurement.ts';
import type { PointId } from '../../vocabulary/points.ts';
import type { QuantityId, UnitCode } from '../../vocabulary/quantities.ts';
import { bareUnitOf, type UnitChoice, USUAL_CHOICE } from '../../vocabulary/unit-choice.ts';
import type { Expectation, UnclearReason } from '../meaning.ts';
import type { Draft } from './draft.ts';
import { changesNothing, FIT_COST, type Fit, fitOf, inUnitOf } from './fit.ts';
import { mayBeClipped, mayLackDigit } from './lost-digit.ts';
import { pairKey, rowsSaid } from './rows-said.ts';
import { type Said, saidValue } from './said-value.ts';
import type { Segment } from './segment.ts';

/** A reading that is expected costs this much less than the same one unasked. */
const UNEXPECTED = 0.6;
/** Less than any doubt: it orders guesses and decides nothing. */
const LESS_OFTEN = 0.05;
const RARE = 0.8;
const MISPLACED = 1;

/** Points of the same letters at another place count as one family: the first of the table is meant if nothing is said. */
const family = (row: Measurand): string =>
  `${row.quantity} ${row.unit} ${row.at.map((point) => point.replace(/@.*$/, '').replace(/^handler-/, '')).join(' ')}`;

const isExpected = (row: Measurand, expectation: Expectation | undefined): boolean =>
  [...(expectation?.readings ?? []), ...(expectation?.besides ?? [])].some(
    (one) => one.quantity === row.quantity && pairKey(one.at) === pairKey(row.at),
  );

/** The readings that a segment may mean, in any order. */
export function composeReading(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = saidValue(segment.items, expectation?.units);
  if (said === undefined) return [];
  const bench = segment.items.some((item) => item.tag === 'bench');
  const rows = rowsSaid(segment.items);
  if (rows.length > 0) {
    const drafts = draftsOf(rows, said, bench, expectation);
    return lacksTip(segment)
      ? drafts.map((draft) => ({ ...draft, doubt: draft.doubt ?? 'several-places-fit' }))
      : drafts;
  }
  // A place that none of them stands at is not dropped in silence.
  const elsewhere = rowsSaid(segment.items.filter((item) => item.tag !== 'place'));
  return draftsOf(elsewhere, said, bench, expectation).map((draft) => ({
    ...draft,
    cost: draft.cost + MISPLACED,
    doubt: draft.doubt ?? 'several-places-fit',
  }));
}

/** "across T one and …": two tips were to come, and one was heard. */
function lacksTip({ items }: Segment): boolean {
  if (!items.some((item) => item.tag === 'spans')) return false;
  const rows = rowsSaid(items);
  return items.filter((item) => item.tag === 'tip').length < 2 && rows.every(({ at }) => at.includes('ground'));
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
      // Microfarads and ohms may read open; amps and volts never do.
      (said.value !== 'open' || row.open === true) &&
      (said.of?.includes(row.quantity) ?? true) &&
      said.units.every((unit) => inUnitOf(row, 0, unit) !== undefined) &&
      (!said.tone || row.quantity === 'resistance') &&
      (!bench || row.quantity === 'resistance' || row.quantity === 'capacitance'),
  );
  const expected = measurable.filter((row) => isExpected(row, expectation));
  const best = new Map<string, Measurand>();
  for (const row of [...expected, ...measurable]) if (!best.has(family(row))) best.set(family(row), row);
  const common = measurable.some((row) => !row.rare);
  const drafts = [...best.values()].map((row) => {
    const draft = draftOf(row, said, bench, expected.includes(row), expectation);
    return common && row.rare && !expected.includes(row) ? { ...draft, cost: draft.cost + RARE } : draft;
  });
  if (expected.length > 0) return expected.length < drafts.length ? atExpected(drafts, expected.length, said) : drafts;
  return isVague(rows, drafts, said)
    ? drafts.map((draft) => ({ ...draft, doubt: draft.doubt ?? 'several-values-fit' }))
    : drafts;
}

/** A name that amps share, said to be open ("fan open"); or one of several quantities, and a value that is likely of none. */
function isVague(rows: readonly Measurand[], drafts: readonly Draft[], said: Said): boolean {
  const likely = drafts.some((draft) => draft.cost < FIT_COST.possible + UNEXPECTED);
  // "the fan is pulling four point six": the name of two places, and more than the one draws of which amps are read.
  if (said.of !== undefined) return !likely && said.number !== undefined && haveSeveralPlaces(rows);
  if (said.value === 'open') return rows.some((row) => row.quantity === 'current' && !row.rare);
  const [best] = [...drafts].sort((a, b) => a.cost - b.cost);
  // "twelve on the coil": ohms are likelier, but a control voltage that is too low is what one looks for.
  const volts = rows.some(
    (row) =>
      row.quantity === 'voltage' &&
      !row.rare &&
      row.at.join() === placeOf(best)?.join() &&
      fitOf(row, said.value, row.unit) !== 'impossible',
  );
  if (best !== undefined && quantityOf(best) === 'resistance' && volts && said.number !== undefined) return true;
  return !likely && new Set(drafts.map(quantityOf)).size > 1;
}

const haveSeveralPlaces = (rows: readonly Measurand[]): boolean => new Set(rows.map(({ at }) => at.join())).size > 1;

/**
 * With a point expected the same words mean that point, whatever else they may name. Where the value fits another
 * quantity better there ("coil twenty seven", ohms expected), it is asked.
 */
function atExpected(drafts: readonly Draft[], count: number, said: Said): Draft[] {
  const [wanted, others] = [drafts.slice(0, count), drafts.slice(count)];
  const [first] = wanted;
  if (first === undefined || said.of !== undefined) return wanted;
  const better = others.some((other) => quantityOf(other) !== quantityOf(first) && other.cost < first.cost);
  return wanted.map((draft) =>
    better ? { ...draft, doubt: draft.doubt === 'implausible' ? 'implausible' : 'several-values-fit' } : draft,
  );
}

const placeOf = (draft: Draft | undefined): readonly PointId[] | undefined =>
  draft?.meaning.kind === 'reading' ? draft.meaning.reading.at : undefined;

const quantityOf = ({ meaning }: Draft): string | undefined =>
  meaning.kind === 'reading' ? meaning.reading.quantity : undefined;

function draftOf(
  row: Measurand,
  said: Said,
  bench: boolean,
  expected: boolean,
  expectation: Expectation | undefined,
): Draft {
  const choice = expectation?.units ?? USUAL_CHOICE;
  const unit = said.units[0] ?? bareUnitOf(row, choice);
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
  const twin = expectation?.typed && isClear(row, said, fit) ? undefined : doubtfulTwin(row, said, unit, fit);
  const doubt = doubtOf(row, said, unit, fit, twin, choice);
  return {
    meaning: { kind: 'reading', reading },
    cost: FIT_COST[fit] + (expected ? 0 : UNEXPECTED + (row.lessOften ? LESS_OFTEN : 0)),
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
  choice: UnitChoice,
): UnclearReason | undefined {
  if (said.doubt !== undefined) return said.doubt;
  if (said.number !== undefined) {
    const among = said.units.length > 0 ? undefined : choice;
    const lost = mayLackDigit(row, said.number, unit, among) || mayBeClipped(row, said.number, unit);
    if (lost || scaleMayBeLost(row, said, unit, fit)) return 'several-values-fit';
  }
  if (twin !== undefined) return 'teen-or-ty';
  if (fit === 'impossible') return 'implausible';
  if (said.nothing && row.open) return 'several-values-fit';
  return undefined;
}

/**
 * Whether a word that makes another unit of it may have been lost: a temperature or pressure that is no likely one in
 * the chosen unit and would be in the other, ohms where megohms are read as well, and millivolts where nothing drops.
 */
function scaleMayBeLost(row: Measurand, said: Said, unit: UnitCode, fit: Fit): boolean {
  if (typeof said.value !== 'number') return false;
  if (unit === 'mV') return row.turns === undefined && fit === 'likely';
  // Twenty what? Ohms to the shell are a short, megohms are none.
  const megohms = row.quantity === 'resistance' && row.high >= 1e8;
  if (megohms && said.units.length === 0 && said.value > 0) return true;
  const other = OTHER_SCALES[unit];
  if (other === undefined || said.named || row.quantity === 'difference') return false;
  return fit === 'possible' && fitOf(row, said.value, other) === 'likely';
}

/** What a number may have been read in that was said without its scale. Kilopascals are no unit to forget where psi are usual. */
const OTHER_SCALES: Readonly<Partial<Record<UnitCode, UnitCode>>> = { '[degF]': 'Cel', Cel: '[degF]', kPa: '[psi]' };

/** At these nearly every teen has a ty that is as likely. */
const WIDE: readonly QuantityId[] = ['pressure', 'vacuum'];

/** Whether what was typed needs no question: digits, and words too where they are likely or where asking would tire. */
const isClear = (row: Measurand, said: Said, fit: Fit): boolean =>
  said.number?.number.form === 'numeral' || fit === 'likely' || WIDE.includes(row.quantity);

/**
 * The twin of a teen or ty, where it must be asked for: both fit equally well, or only the twin does. Where the value
 * fits better than its twin it is taken.
 */
function doubtfulTwin(row: Measurand, said: Said, unit: UnitCode, fit: Fit): number | undefined {
  if (typeof said.value !== 'number' || said.number === undefined || said.range !== undefined) return undefined;
  const { number, words, spokenIn } = said.number;
  const twin = number.form === 'numeral' ? spokenIn.twinOfNumeral(said.value) : spokenIn.twin(words);
  if (twin === undefined) return undefined;
  if (changesNothing(row, said.value, twin, unit)) return undefined;
  const other = fitOf(row, twin, unit);
  return other !== 'impossible' && FIT_COST[other] <= FIT_COST[fit] ? twin : undefined;
}

import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import type { ObservationId } from '../../vocabulary/observations.ts';
import type { QuantityId } from '../../vocabulary/quantities.ts';
import { unitFor } from '../../vocabulary/units.ts';
import type { CommonWords } from '../language.ts';
import type { Expectation, Meaning } from '../meaning.ts';
import { composeAbsence } from './absence.ts';
import { composeCorrection } from './correction.ts';
import { composeDeed, composeWork } from './deeds.ts';
import { composeDictation, composeNote } from './dictated.ts';
import { type Draft, sure } from './draft.ts';
import { FIT_COST } from './fit.ts';
import { composeAnswer } from './in-a-word.ts';
import { composeReading, draftsOf } from './reading.ts';
import { pairKey, rowsSaid } from './rows-said.ts';
import { type Said, saidValue } from './said-value.ts';
import type { Segment } from './segment.ts';
import { composePair, composeSame, sideBySide } from './several.ts';
import {
  composeCheckOnMe,
  composeDischarged,
  composeMeterProof,
  composeOrder,
  composeSwitch,
  composeSwitchPlace,
} from './speech.ts';
import { composeWire } from './wire.ts';
import {
  composeMass,
  composeNameplate,
  composePart,
  composePlateAnswer,
  composePlateNumbers,
  isWeightAsked,
} from './written.ts';

/**
 * Every meaning that one segment may have; asked where the speaker began again inside it, or broke off. Empty where it
 * has none.
 */
export function compose(segment: Segment, expectation: Expectation | undefined, words: CommonWords): Draft[] {
  const drafts = draftsFor(segment, expectation, words);
  const { restarted, cut } = segment;
  if (restarted === undefined && !cut) return drafts;
  const doubt = restarted === undefined ? 'needed-repair' : 'several-values-fit';
  // "two forty, sorry, two thirty" is as plain as "correction two thirty" in a breath of its own.
  const plain = ({ cost }: Draft): boolean => restarted === 'marked' && !cut && cost < FIT_COST.possible;
  return drafts.map((draft) => (plain(draft) ? draft : { ...draft, doubt: draft.doubt ?? doubt }));
}

function draftsFor(segment: Segment, expectation: Expectation | undefined, words: CommonWords): Draft[] {
  switch (segment.frame) {
    case 'reading':
      return segment.parted === undefined ? composeReading(segment, expectation) : composeParted(segment, expectation);
    case 'value':
      return composeValue(segment, expectation);
    case 'pair':
      return composeAskedPair(segment, expectation);
    case 'plate-answer':
      return composePlateAnswer(segment, expectation?.plate ?? [], expectation?.units);
    case 'answer':
      return composeAnswer(segment, expectation);
    case 'same':
      return composeSame(expectation);
    case 'command':
      return composeOrder(segment);
    case 'correction':
      return composeCorrection(segment, expectation);
    case 'switch':
      return composeSwitch(segment, expectation);
    case 'absence':
      return composeAbsence(segment);
    case 'meter-proof':
      return composeMeterProof(segment);
    case 'discharged':
      return composeDischarged(segment);
    case 'observation': {
      const seen = segment.items.find((item) => item.tag === 'observation');
      if (seen === undefined) return [];
      const { observation, as } = seen;
      const meaning: Meaning = { kind: 'report', report: { type: 'observation', observation, ...(as && { as }) } };
      // Looked for, it is what was seen.
      const isLookedFor = expectation?.answers?.some(({ means }) => isSeen(means, observation)) === true;
      return seen.unsure && !isLookedFor ? [{ meaning, cost: 0, doubt: 'several-values-fit' }] : sure(meaning);
    }
    case 'injury':
      return sure({ kind: 'report', report: { type: 'injury' } });
    case 'job-item': {
      const said = segment.items.find((item) => item.tag === 'item');
      if (said === undefined) return [];
      const meaning: Meaning = { kind: 'report', report: { type: 'job-item', item: said.item } };
      // "[thermostat's] blank": of the plate only where the plate is asked for.
      const isOfPlate = said.item === 'plate-line-unreadable' && expectation?.plate === undefined;
      return isOfPlate ? [{ meaning, cost: 0, doubt: 'no-place' }] : sure(meaning);
    }
    case 'check-on-me':
      return composeCheckOnMe(segment);
    case 'dictation':
      return composeDictation(segment, words);
    case 'nameplate':
      return composeNameplate(segment, expectation?.units);
    case 'part':
      return composePart(segment);
    case 'work':
      return composeWork(segment);
    case 'deed':
      return composeDeed(segment);
    case 'wire':
      return composeWire(segment);
    case 'mass':
      return composeMass(segment, expectation);
    case 'note':
    case 'remark':
      return composeNote(segment, words);
    case 'place':
      return composePlace(segment, expectation);
    case 'next-place':
      return composeNextPlace(segment);
    case 'no-place': {
      const told = segment.items.find((item) => item.tag === 'state')?.state;
      const state = told === 'open' || told === 'locked' ? { state: told } : {};
      return [
        { meaning: { kind: 'unclear', reason: 'no-place', alternatives: [], ...state }, cost: 0, doubt: 'no-place' },
      ];
    }
    case 'switch-place':
      return composeSwitchPlace(segment, expectation);
  }
}

/** Two numbers that only look like pressures are the plate's where it is asked for. */
function composeAskedPair(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const isOver = segment.items.some((item) => item.tag === 'pair' && item.of === 'over');
  const plated = isOver ? composePlateNumbers(segment, expectation?.plate ?? [], expectation?.units) : [];
  return plated.length > 0 ? plated : composePair(segment, expectation);
}

/** A value alone: the answer to a teen/ty question, the one expected reading, or nobody's. */
function composeValue(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = saidValue(segment.items, expectation?.units);
  if (said === undefined) return [];
  const [unit] = said.units;
  const meaning: Meaning = { kind: 'value', value: said.value, ...(unit && { unit }) };
  if (expectation?.question === 'teen-or-ty' && typeof said.value === 'number') {
    const { options = [] } = expectation;
    const digits = said.number?.number.form === 'digits';
    const chosen = options.filter((option) => option === said.value || (digits && option % 100 === said.value));
    if (digits && chosen.length === 1) return sure({ kind: 'value', value: chosen[0]!, digits: true });
    return [{ meaning, cost: 0, doubt: 'teen-or-ty' }];
  }
  const plated =
    typeof said.value === 'number' ? composePlateNumbers(segment, expectation?.plate ?? [], expectation?.units) : [];
  if (plated.length > 0) return plated;
  const expected = expectation?.readings ?? [];
  // Its number alone names a refrigerant where one is asked for.
  if (expected.length === 0 && expectation?.plate?.[0] === 'refrigerant') return [];
  const isVolts = typeof said.value === 'number' && (unit === undefined || unit === 'V') && said.doubt === undefined;
  if (expected.length === 0 && expectation?.meter === true && isVolts) return composeMeterProof(segment);
  if (isWeightAsked(expectation)) return composeWeight(said, meaning);
  const rows = MEASURANDS.filter((row) =>
    expected.some((one) => row.quantity === one.quantity && pairKey(row.at) === pairKey(one.at)),
  );
  const bench = segment.items.some((item) => item.tag === 'bench');
  // The place was named before: the two are what they would be in one breath.
  if (expectation?.question === 'what-value') {
    const placed = draftsOf(rows, said, bench, { ...expectation, readings: [] });
    if (placed.length > 0) return placed;
  }
  const drafts = expected.length === 1 ? draftsOf(rows, said, bench, expectation) : [];
  if (drafts.length > 0) return drafts;
  const told = toldByUnit(said);
  if (told !== undefined) return draftsOf([told], said, bench, expectation);
  return [{ meaning, cost: 0, doubt: expected.length > 1 ? 'several-places-fit' : 'no-place' }];
}

const isSeen = (meaning: Meaning, observation: ObservationId): boolean =>
  meaning.kind === 'report' && meaning.report.type === 'observation' && meaning.report.observation === observation;

/** A number, with a unit of weight or none, where a weight is asked for: the step knows which way it went. */
function composeWeight({ value, units: [unit], doubt }: Said, meaning: Meaning): Draft[] {
  if (typeof value !== 'number' || (unit !== undefined && unitFor(unit, 'mass') === undefined))
    return [{ meaning, cost: 1, doubt: 'no-place' }];
  return [{ meaning, cost: 0, ...(doubt && { doubt }) }];
}

/** Microns, cubic feet a minute and hertz are read at one place only. */
const TELLING: readonly QuantityId[] = ['vacuum', 'airflow', 'frequency'];
function toldByUnit(said: Said): Measurand | undefined {
  const [unit] = said.units;
  if (unit === undefined) return undefined;
  const rows = MEASURANDS.filter((row) => TELLING.includes(row.quantity) && row.unit === unit);
  return rows.length === 1 ? rows[0] : undefined;
}

/** Dearer than any way in which the place belongs to the value before it. */
const NEXT = 0.6;

/**
 * "Zero, now leg two to ground": the value is of what is asked, and the place is the next one. Where nothing is asked, or
 * that very place is, it is asked which was meant.
 */
function composeParted(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const isPlace = ({ tag }: Segment['items'][number]): boolean =>
    tag === 'tip' || tag === 'named' || tag === 'place' || tag === 'spans';
  const whole = composeReading(segment, expectation);
  const doubted = whole.map((draft): Draft => ({ ...draft, doubt: draft.doubt ?? 'several-places-fit' }));
  const [value] = composeValue({ ...segment, items: segment.items.filter((item) => !isPlace(item)) }, expectation);
  const [next] = composeNextPlace(segment);
  if (value?.meaning.kind !== 'reading' || next?.meaning.kind !== 'unclear')
    return segment.parted === 'stop' ? whole : doubted;
  const { at, quantity } = value.meaning.reading;
  const isAsked = next.meaning.of?.some((one) => pairKey(one.at) === pairKey(at)) === true;
  if (isAsked) return whole;
  // "One twenty now leg two", with the outdoor air asked for: volts are none of its degrees.
  const isAlike = next.meaning.of?.some((one) => one.quantity === quantity) === true;
  return isAlike ? [sideBySide([value, next])] : doubted;
}

/** The place of the next reading: named, and its value still to come. */
function composeNextPlace(segment: Segment): Draft[] {
  const rows = rowsSaid(segment.items);
  return rows.length === 0 ? [] : [{ meaning: withoutValue(rows), cost: NEXT }];
}

const withoutValue = (rows: readonly Measurand[]): Meaning => ({
  kind: 'unclear',
  reason: 'no-value',
  alternatives: [],
  at: rows[0]!.at,
  of: rows.map(({ quantity, at }) => ({ quantity, at })),
});

/** A place alone answers where a value was read; otherwise a value is missing. */
function composePlace(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const { placeless } = expectation ?? {};
  const rows = rowsSaid(segment.items);
  if (placeless !== undefined && rows.length > 0) {
    const said = { value: placeless.value, units: placeless.unit === undefined ? [] : [placeless.unit], of: undefined };
    return draftsOf(rows, said, false, expectation);
  }
  if (rows.length > 0) return [{ meaning: withoutValue(rows), cost: 2, doubt: 'no-value' }];
  return [
    {
      meaning: { kind: 'unclear', reason: 'several-values-fit', alternatives: [] },
      cost: 2,
      doubt: 'several-values-fit',
    },
  ];
}

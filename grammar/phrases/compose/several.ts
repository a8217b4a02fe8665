import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import type { Reading } from '../../vocabulary/measurement.ts';
import type { Expectation, Meaning } from '../meaning.ts';
import type { Draft } from './draft.ts';
import { draftsOf } from './reading.ts';
import { saidValue } from './said-value.ts';
import type { Item, Segment } from './segment.ts';

const LEGS = ['L1', 'L2'].map(
  (leg) => MEASURANDS.find((row) => row.quantity === 'voltage' && row.at[0] === leg && row.at[1] === 'ground')!,
);
const PRESSURES = ['suction-port', 'liquid-port'].map(
  (port) => MEASURANDS.find((row) => row.quantity === 'pressure' && row.at[0] === port)!,
);

const SECTIONS = ['cap-HERM', 'cap-FAN'].map(
  (section) => MEASURANDS.find((row) => row.quantity === 'capacitance' && row.at[1] === section)!,
);

/** "one twenty both legs", "legs one eighteen and one nineteen", "one eighteen over three forty". */
export function composePair(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const kind = segment.items.find((item) => item.tag === 'pair')?.of;
  const rows = rowsOfPair(kind, expectation);
  const others = segment.items.filter((item) => item.tag !== 'said');
  const numbers = segment.items.filter((item) => item.tag === 'said');
  const values = numbers.length === 1 ? [numbers[0]!, numbers[0]!] : numbers;
  const parts = rows.flatMap((row, index) => partOf(row, [...others, values[index]!], expectation));
  if (parts.length !== 2) return [];
  const draft = sideBySide(parts);
  if (kind === 'capacitor' && draft.doubt === undefined && mayBeRated(segment.items))
    return [{ ...draft, doubt: 'several-values-fit' }];
  // Nothing but the numbers says that "one eighteen over three forty" are pressures.
  const named =
    kind === 'both' || kind === 'legs' || kind === 'charges'
      ? rows === CHARGES || !isChargeAsked(expectation)
      : kind !== 'over' || parts.every((part) => part.cost === 0);
  return [named || draft.doubt !== undefined ? draft : { ...draft, doubt: 'no-place' }];
}

const CHARGES = ['cap-HERM', 'cap-FAN'].map(
  (section) => MEASURANDS.find((row) => row.quantity === 'voltage-dc' && row.at[1] === section)!,
);

function rowsOfPair(
  kind: Extract<Item, { tag: 'pair' }>['of'] | undefined,
  expectation: Expectation | undefined,
): readonly Measurand[] {
  switch (kind) {
    case 'both':
      return isChargeAsked(expectation) ? CHARGES : LEGS;
    case 'legs':
      return LEGS;
    case 'capacitor':
      return SECTIONS;
    case 'charges':
      return isChargeAsked(expectation) && (expectation?.besides?.length ?? 0) > 0 ? CHARGES : [];
    default:
      return PRESSURES;
  }
}

/** Discharging is asked section by section: both are both of these, and legs are asked about. */
const isChargeAsked = (expectation: Expectation | undefined): boolean =>
  expectation?.readings.some((one) =>
    CHARGES.some((row) => row.quantity === one.quantity && row.at.join() === one.at.join()),
  ) === true;

/** What dual run capacitors are made for, microfarads of each section (common practice). */
const RATED: readonly (readonly number[])[] = [
  [20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80],
  [3, 4, 5, 7.5, 10],
];

/** "the run cap, forty five over five": no word says that it was read, and both numbers are such as a part is sold by. */
function mayBeRated(items: readonly Item[]): boolean {
  const values = items.flatMap((item) => (item.tag === 'said' ? [item.number.value] : []));
  const read = items.some((item) => item.tag === 'measures' || item.tag === 'unit');
  return !read && values.every((value, index) => RATED[index]?.includes(value) === true);
}

function partOf(row: Measurand, items: readonly Item[], expectation: Expectation | undefined): readonly Draft[] {
  const said = saidValue(items, expectation?.units);
  const bench = items.some((item) => item.tag === 'bench');
  return said === undefined ? [] : draftsOf([row], said, bench, expectation);
}

/** Several meanings as one: as dear as the dearest, doubtful as the first that is. */
export function sideBySide(parts: readonly Draft[]): Draft {
  const doubtful = parts.find((part) => part.doubt !== undefined);
  return {
    meaning: { kind: 'several', parts: parts.map((part) => part.meaning) },
    cost: Math.max(...parts.map((part) => part.cost)),
    ...(doubtful?.doubt && { doubt: doubtful.doubt }),
    ...(doubtful?.twin !== undefined && { twin: doubtful.twin }),
  };
}

/** "same on the other": the latest reading's value on the other leg. Always asked: the number was not said. */
export function composeSame(expectation: Expectation | undefined): Draft[] {
  const latest = expectation?.latest;
  const other = latest === undefined ? undefined : siblingOf(latest);
  if (latest === undefined || other === undefined) {
    const meaning: Meaning = { kind: 'unclear', reason: 'no-place', alternatives: [] };
    return [{ meaning, cost: 0, doubt: 'no-place' }];
  }
  return [{ meaning: { kind: 'reading', reading: { ...latest, at: other } }, cost: 0, doubt: 'several-values-fit' }];
}

/** The same place on the other leg, by the number in its name: L1 ↔ L2, fuse-1-line ↔ fuse-2-line. */
function siblingOf(latest: Reading): Reading['at'] | undefined {
  const crossed: readonly string[] = latest.at.map((point) =>
    point.replace(/[12]/, (leg) => (leg === '1' ? '2' : '1')),
  );
  const row = MEASURANDS.find(
    (candidate) =>
      candidate.quantity === latest.quantity &&
      candidate.at.every((point) => crossed.includes(point)) &&
      candidate.at.length === crossed.length,
  );
  return row === undefined || row.at.join() === latest.at.join() ? undefined : row.at;
}

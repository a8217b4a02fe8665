import { DEVICES } from '../../vocabulary/devices.ts';
import { MEASURANDS } from '../../vocabulary/measurands.ts';
import type { Expectation, Meaning } from '../meaning.ts';
import type { Draft } from './draft.ts';
import { composeReading, draftsOf, rowsSaid, saidValue } from './reading.ts';
import type { Item, SaidNumber, Segment } from './segment.ts';

const numbersOf = (items: readonly Item[]): SaidNumber[] => items.filter((item) => item.tag === 'said');

const sure = (meaning: Meaning): Draft[] => [{ meaning, cost: 0 }];
const unless = (clean: boolean, meaning: Meaning): Draft[] =>
  clean ? sure(meaning) : [{ meaning, cost: 0, doubt: 'needed-repair' }];

/** A report of a switching device. Without a place, power off is asked about and power on is believed. */
export function composeSwitch(segment: Segment): Draft[] {
  const device = segment.items.find((item) => item.tag === 'device');
  const state = segment.items.find((item) => item.tag === 'state');
  if (device === undefined || state === undefined) return [];
  const row = DEVICES[device.row]!;
  const meaning: Meaning = {
    kind: 'report',
    report: { type: 'energy', device: row.device, place: row.place, state: state.state },
  };
  const careful = state.state === 'closed' || state.state === 'unlocked';
  return 'withoutPlace' in row && !careful ? [{ meaning, cost: 0, doubt: 'no-place' }] : sure(meaning);
}

/** "meter two forty, zero, zero, zero, meter two forty". */
export function composeAbsence(segment: Segment): Draft[] {
  const numbers = numbersOf(segment.items);
  const values = numbers.map((item) => item.number.value);
  const zones = segment.items.flatMap((item) => (item.tag === 'zones' ? item.zones : []));
  const before = values[0];
  const after = values.at(-1);
  if (before === undefined || after === undefined || values.length < 3) return [];
  const meaning: Meaning = {
    kind: 'report',
    report: {
      type: 'absence-of-voltage',
      zone: zones[0] ?? 'outdoor-load',
      before,
      values: values.slice(1, -1),
      after,
    },
  };
  const known = (volts: number): number => (volts >= 20 && volts <= 600 ? 0 : 2);
  return [
    {
      meaning,
      // Many small numbers are dearer than few: "two oh eight" is not 2, 0, 8.
      cost: known(before) + known(after) + 0.4 * values.length,
      ...(!numbers.every((item) => item.clean) && { doubt: 'needed-repair' as const }),
    },
  ];
}

export function composeMeterProof(segment: Segment): Draft[] {
  const [number] = numbersOf(segment.items);
  if (number === undefined) return [];
  const { value } = number.number;
  const meaning: Meaning = { kind: 'report', report: { type: 'meter-proof', value } };
  if (value < 0 || value > 1000) return [{ meaning, cost: 2, doubt: 'implausible' }];
  return unless(number.clean, meaning);
}

export function composeDischarged(segment: Segment): Draft[] {
  const zones = segment.items.flatMap((item) => (item.tag === 'zones' ? item.zones : []));
  const parts: Meaning[] = zones.map((zone) => ({ kind: 'report', report: { type: 'discharged', zone } }));
  const [first] = parts;
  if (first === undefined) return [];
  return sure(parts.length === 1 ? first : { kind: 'several', parts });
}

/** "one twenty both legs": a reading for each leg. */
export function composeBoth(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = saidValue(segment.items);
  if (said === undefined) return [];
  const legs = ['L1', 'L2'].map((leg) =>
    MEASURANDS.find((row) => row.quantity === 'voltage' && row.at[0] === leg && row.at[1] === 'ground'),
  );
  const drafts = legs.flatMap((row) => (row === undefined ? [] : draftsOf([row], said, false, expectation)));
  const doubtful = drafts.find((draft) => draft.doubt !== undefined);
  return [
    {
      meaning: { kind: 'several', parts: drafts.map((draft) => draft.meaning) },
      cost: Math.max(...drafts.map((draft) => draft.cost)),
      ...(doubtful?.doubt && { doubt: doubtful.doubt }),
      ...(doubtful?.twin !== undefined && { twin: doubtful.twin }),
    },
  ];
}

/** "correction one nineteen", "no, leg two": what is to be set right in the latest reading. */
export function composeCorrection(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = saidValue(segment.items);
  const rows = rowsSaid(segment.items);
  const asReading = rows.length === 0 ? [] : composeReading(segment, expectation);
  if (asReading.length > 0 && said !== undefined) return asReading.map((draft) => asCorrection(draft));
  if (rows.length > 0) {
    return [{ meaning: { kind: 'command', command: 'correct', correction: { at: rows[0]!.at } }, cost: 0 }];
  }
  if (said === undefined) return [];
  const [unit] = said.units;
  const meaning: Meaning = {
    kind: 'command',
    command: 'correct',
    correction: { value: said.value, ...(unit && { unit }) },
  };
  return [{ meaning, cost: 0, ...(said.doubt && { doubt: said.doubt }) }];
}

function asCorrection(draft: Draft): Draft {
  if (draft.meaning.kind !== 'reading') return draft;
  const { at, value, unit } = draft.meaning.reading;
  return { ...draft, meaning: { kind: 'command', command: 'correct', correction: { at, value, unit } } };
}

export { numbersOf, sure, unless };

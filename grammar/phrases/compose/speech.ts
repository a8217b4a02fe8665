import { DEVICES } from '../../vocabulary/devices.ts';
import type { Meaning } from '../meaning.ts';
import { readNumber } from '../numbers/read-number.ts';
import { type Draft, sure, unless } from './draft.ts';
import { numbersOf, type SaidNumber, type Segment, unbroken } from './segment.ts';

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

/** Lowest voltage of a source on which a meter is proved: a 24 V transformer. */
const LOWEST_SOURCE = 22;

/** "meter two forty, zero, zero, zero, meter two forty". */
export function composeAbsence(segment: Segment): Draft[] {
  const numbers = numbersOf(segment.items);
  const values = segment.items.flatMap((item) =>
    item.tag === 'said' ? [item.number.value] : item.tag === 'value' ? [0] : [],
  );
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
  const proofs = [before, after].filter((volts) => volts < LOWEST_SOURCE || volts > 600).length;
  // A meter that reads nothing on its source once is a proof that failed: it is taken, and judged elsewhere.
  const wild = proofs === 2 || values.some((volts) => volts < 0 || volts > 600);
  const joined = numbers.some((number, at) => at > 0 && runsOn(numbers[at - 1]!, number));
  const doubt = !unbroken(numbers) ? 'needed-repair' : wild ? 'implausible' : joined ? 'several-values-fit' : undefined;
  // Two legs make three readings: each to ground and one to the other. Other counts are taken, but are dearer.
  const cost = 2 * proofs + 0.3 * Math.abs(values.length - 2 - 3) + (joined ? 0.5 : 0);
  return [{ meaning, cost, ...(doubt && { doubt }) }];
}

/** "two forty | one", "five | oh": nothing between them, and the first number might as well go on. */
function runsOn(one: SaidNumber, next: SaidNumber): boolean {
  if (next.follows === undefined || next.follows !== one.words.at(-1)) return false;
  const joined = readNumber([...one.words, ...next.words])?.value;
  return joined !== undefined && joined !== 0 && joined <= 600;
}

export function composeMeterProof(segment: Segment): Draft[] {
  const [number] = numbersOf(segment.items);
  if (number === undefined) return [];
  const { value } = number.number;
  const meaning: Meaning = { kind: 'report', report: { type: 'meter-proof', value } };
  if (value < 0 || value > 1000) return [{ meaning, cost: 2, doubt: 'implausible' }];
  return unless(unbroken([number]), meaning);
}

/** The lone-worker check: from one minute to two hours. */
export function composeCheckOnMe(segment: Segment): Draft[] {
  const [number] = numbersOf(segment.items);
  if (number === undefined) return [];
  const every = segment.items.some((item) => item.tag === 'every');
  const meaning: Meaning = { kind: 'check-on-me', minutes: number.number.value, every };
  if (meaning.minutes < 1 || meaning.minutes > 120) return [{ meaning, cost: 2, doubt: 'implausible' }];
  return unless(unbroken([number]), meaning);
}

export function composeDischarged(segment: Segment): Draft[] {
  const zones = segment.items.flatMap((item) => (item.tag === 'zones' ? item.zones : []));
  const parts: Meaning[] = zones.map((zone) => ({ kind: 'report', report: { type: 'discharged', zone } }));
  const [first] = parts;
  if (first === undefined) return [];
  return sure(parts.length === 1 ? first : { kind: 'several', parts });
}

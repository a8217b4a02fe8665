import { DEVICES } from '../../vocabulary/devices.ts';
import type { Expectation, Meaning } from '../meaning.ts';
import { type Draft, sure, unless } from './draft.ts';
import { rowsSaid } from './rows-said.ts';
import { numbersOf, type Segment, unbroken } from './segment.ts';

/** An order, with what it is about. A place that no reading knows is not dropped in silence. */
export function composeOrder(segment: Segment): Draft[] {
  const { items } = segment;
  const order = items.find((item) => item.tag === 'command');
  if (order === undefined) return [];
  const focus = items.find((item) => item.tag === 'focus')?.focus;
  const rows = rowsSaid(items);
  const isPlaced = items.some((item) => item.tag === 'tip' || item.tag === 'named');
  if (isPlaced && rows.length === 0) return [];
  return sure({
    kind: 'command',
    command: order.command,
    ...(items.some((item) => item.tag === 'moment') && { moment: true as const }),
    ...(focus && { focus }),
    ...(isPlaced && { of: rows.map(({ quantity, at }) => ({ quantity, at })) }),
  });
}

/** A report of a switching device. Without a place, power off is that of the switch asked for, else asked about; power on is believed. */
export function composeSwitch(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const device = segment.items.find((item) => item.tag === 'device');
  const state = segment.items.find((item) => item.tag === 'state');
  if (device === undefined || state === undefined) return [];
  const row = DEVICES[device.row]!;
  const meaning: Meaning = {
    kind: 'report',
    report: { type: 'energy', device: row.device, place: row.place, state: state.state },
  };
  const careful = state.state === 'closed' || state.state === 'unlocked';
  const work = segment.items.find((item) => item.tag === 'work')?.work;
  if (work !== undefined && row.device === 'breaker')
    return sure({ kind: 'several', parts: [meaning, { kind: 'work', work }] });
  if (!('withoutPlace' in row) || careful) return sure(meaning);
  const asked = switchAsked(row.device, state.state, expectation);
  return asked === undefined ? [{ meaning, cost: 0, doubt: 'no-place' }] : sure(asked);
}

/** What a short answer would say here of that device: the step names the place. */
function switchAsked(device: string, state: string, expectation: Expectation | undefined): Meaning | undefined {
  return expectation?.answers?.find(
    ({ means }) =>
      means.kind === 'report' &&
      means.report.type === 'energy' &&
      means.report.device === device &&
      means.report.state === state,
  )?.means;
}

/** Where a switch is, alone: it answers which one was told of, and says nothing else. */
export function composeSwitchPlace(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const device = segment.items.find((item) => item.tag === 'device');
  const state = expectation?.switched;
  if (device === undefined || state === undefined) return [];
  const row = DEVICES[device.row]!;
  return sure({ kind: 'report', report: { type: 'energy', device: row.device, place: row.place, state } });
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

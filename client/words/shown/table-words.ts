import type { WireMove } from '../../../grammar/visit/events.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { pointWords } from '../things/place-words.ts';
import { showPlace, showValue } from './show-reading.ts';

/** All readings of a visit, as a table. */
export const READING_TABLE = {
  none: 'No readings yet.',
  where: 'Where',
  reading: 'Reading',
  judged: 'Judged',
  withdrawn: 'withdrawn',
  was: ({ value, unit }: Reading) => `was ${showValue(value, unit)}`,
  mark: ({ at, value, unit }: Reading, judged: string | undefined) =>
    `${showPlace(at)} ${showValue(value, unit)}${judged === undefined ? '' : `, ${judged}`}`,
} as const;

/** The wires that moved, as a table and as a drawing. */
export const WIRE_BOARD = {
  none: 'No wire was moved.',
  wire: 'Wire',
  cameOff: 'Came off',
  nowOn: 'Now on',
  nowhere: '–',
  notLanded: 'off: not landed',
  drawing: (wires: readonly string[]) => `Terminals: ${wires.join('; ')}`,
  drawnOff: (wire: string) => `${wire} off`,
  drawnOn: (wire: string, terminal: string) => `${wire} on ${terminal}`,
  offHere: (wire: string) => `(${wire} off)`,
} as const;

/** A wire, or a jumper in place, as it stands now. */
interface StandingWire extends Pick<WireMove, 'colour' | 'size' | 'from' | 'to'> {
  readonly state: 'off' | 'landed' | 'jumper';
}

export function wireName({ state, size, colour }: StandingWire): string {
  return state === 'jumper' ? 'jumper' : [size, colour, 'wire'].filter(Boolean).join(' ');
}

/** What fits beside a terminal of the drawing. */
export function shortWireName({ state, colour }: StandingWire): string {
  return state === 'jumper' ? 'jumper' : (colour ?? 'wire');
}

export function terminalName(id: string | undefined): string {
  return id === undefined ? '' : pointWords(id);
}

/** Where a wire is, or what a jumper joins. */
export function nowOn({ state, from, to }: StandingWire): string {
  if (state === 'jumper') return `${terminalName(from)} to ${terminalName(to)}`;
  return terminalName(to) || 'unnamed terminal';
}

import type { WireMove } from '../../../grammar/visit/events.ts';
import { isPoint } from '../../../grammar/vocabulary/points.ts';
import { WIRE_DOUBTS } from '../../words/talk/doubt-words.ts';
import { UNNAMED_TERMINAL } from '../../words/things/wire-words.ts';
import { TERMINALS } from './terminals.ts';

/** A wire that is off its terminal. */
export interface LooseWire {
  readonly colour?: string;
  readonly size?: string;
  readonly from: string;
}

/** Wires lifted and not yet landed, in the order they came off. */
export function looseWires(moves: readonly WireMove[]): readonly LooseWire[] {
  const loose: LooseWire[] = [];
  for (const move of moves) {
    if (move.action === 'lifted') loose.push({ ...named(move), from: move.from ?? UNNAMED_TERMINAL });
    if (move.action === 'landed') {
      const index = indexOfWire(loose, move);
      if (index >= 0) loose.splice(index, 1);
    }
  }
  return loose;
}

/** Why a landing is doubted: it is another terminal than the one the wire came off, and not one of its group. */
export function doubtLanding(moves: readonly WireMove[], landing: WireMove): string | undefined {
  const loose = looseWires(moves);
  const wire = loose[indexOfWire(loose, landing)];
  if (wire === undefined) return loose.length === 0 ? undefined : WIRE_DOUBTS.notLifted;
  if (landing.to === undefined || landing.to === wire.from || belongTogether(landing.to, wire.from)) return undefined;
  return WIRE_DOUBTS.otherTerminal(wire.from);
}

function belongTogether(one: string, other: string): boolean {
  if (!isPoint(one) || !isPoint(other)) return false;
  const { conductor } = TERMINALS[one];
  return conductor !== 'its own' && conductor === TERMINALS[other].conductor;
}

/** The loose wire a landing speaks of: by colour and size where they are said, else by the terminal it came off. */
function indexOfWire(loose: readonly LooseWire[], landing: WireMove): number {
  const byName = loose.findIndex(
    (wire) =>
      landing.colour !== undefined &&
      wire.colour === landing.colour &&
      (landing.size === undefined || landing.size === wire.size),
  );
  if (byName >= 0 || landing.colour !== undefined) return byName;
  const byPlace = loose.findIndex((wire) => wire.from === landing.to);
  return byPlace >= 0 || loose.length !== 1 ? byPlace : 0;
}

function named(move: WireMove): Pick<LooseWire, 'colour' | 'size'> {
  return {
    ...(move.colour === undefined ? {} : { colour: move.colour }),
    ...(move.size === undefined ? {} : { size: move.size }),
  };
}

/** One wire that moved, or a jumper in place, as it stands now. */
export interface LandingRow {
  /** In the order in which they came into the talk. */
  readonly number: number;
  readonly colour?: string;
  readonly size?: string;
  readonly from?: string;
  readonly to?: string;
  readonly state: 'off' | 'landed' | 'jumper';
}

/** The wires that moved, each once, and the jumpers that are in place. */
export function landingRows(moves: readonly WireMove[]): readonly LandingRow[] {
  const rows: LandingRow[] = [];
  for (const move of moves) {
    const { action, ...named } = move;
    const number = rows.length + 1;
    switch (action) {
      case 'lifted':
        rows.push({ number, ...named, state: 'off' });
        break;
      case 'jumper-on':
        rows.push({ number, ...named, state: 'jumper' });
        break;
      case 'jumper-off': {
        const at = rows.findLastIndex((row) => row.state === 'jumper');
        if (at >= 0) rows.splice(at, 1);
        break;
      }
      case 'landed': {
        const off = rows.filter((row) => row.state === 'off');
        const loose = off.map((row) => ({ ...row, from: row.from ?? UNNAMED_TERMINAL }));
        const found = off[indexOfWire(loose, move)];
        const to = move.to ?? found?.from;
        const landed = { ...named, ...(to === undefined ? {} : { to }), state: 'landed' as const };
        if (found === undefined) rows.push({ number, ...landed });
        else rows[rows.indexOf(found)] = { ...landed, ...found, ...(to === undefined ? {} : { to }), state: 'landed' };
      }
    }
  }
  return rows.map((row, index) => ({ ...row, number: index + 1 }));
}

/** The two sides of one switch that protects, or of one that stands for a door. */
const SWITCH_SIDES = ['high-switch', 'low-switch', 'float', 'door-switch'] as const;

/** A jumper across a protecting switch: it is bypassed. */
export function spansSwitch({ action, from, to }: WireMove): boolean {
  if (action !== 'jumper-on') return false;
  return SWITCH_SIDES.some((side) => [from, to].every((end) => end?.startsWith(`${side}-`) === true));
}

/** Jumpers put on and not taken off again. */
export function jumpersInPlace(moves: readonly WireMove[]): number {
  const count = (action: WireMove['action']) => moves.filter((move) => move.action === action).length;
  return Math.max(0, count('jumper-on') - count('jumper-off'));
}

import type { WireMove } from '../../../grammar/visit/events.ts';
import { pointWords } from './place-words.ts';

/** Where a wire came off when nobody said where. */
export const UNNAMED_TERMINAL = 'an unnamed terminal';

/** "brown wire lifted from capacitor fan". */
export function wireWords(wire: WireMove): string {
  const what = [wire.size, wire.colour].filter((word) => word !== undefined).join(' ');
  const from = wire.from === undefined ? '' : ` from ${pointWords(wire.from)}`;
  const to = wire.to === undefined ? '' : ` ${wire.action === 'landed' ? 'on' : 'to'} ${pointWords(wire.to)}`;
  const thing =
    wire.action === 'jumper-on' || wire.action === 'jumper-off' ? 'jumper' : what === '' ? 'wire' : `${what} wire`;
  return `${thing} ${wire.action.replace('jumper-', '')}${from}${to}`;
}

/** "jumper from leg one to T one": one that is in place. */
export function jumperWords({ from, to }: Pick<WireMove, 'from' | 'to'>): string {
  const ends = [from, to].filter((end) => end !== undefined).map(pointWords);
  return ends.length === 0 ? 'a jumper' : `jumper ${ends.join(' to ')}`;
}

/** "10 gauge brown wire from capacitor fan": one that is off its terminal. */
export function looseWireWords({ size, colour, from }: Pick<WireMove, 'size' | 'colour'> & { from: string }): string {
  return [size, colour, 'wire from', pointWords(from)].filter(Boolean).join(' ');
}

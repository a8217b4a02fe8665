import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { Chance } from './chance.ts';
import type { Design, LinkName, Yard } from './yard.ts';

/** Something that is wrong with a yard. */
export interface Trouble {
  readonly id: string;
  readonly family: 'power' | 'motors' | 'control' | 'cooling' | 'outside';
  /** Names of the list that a careful technician may give it. */
  readonly called: readonly FaultId[];
  readonly fits?: (design: Design) => boolean;
  /** @param depth from barely, 0, to entirely, 1 */
  readonly put: (yard: Yard, depth: number, chance: Chance) => void;
  readonly often?: number;
}

export const BROKEN = Number.POSITIVE_INFINITY;
/** Ohms of what conducts badly, from tenths to nothing: burnt metal has many. */
export const bad = (depth: number, from = 0.6, to = 4e4): number =>
  depth > 0.8 ? BROKEN : from * (to / from) ** depth;

type Line = readonly [
  id: string,
  called: FaultId | readonly FaultId[],
  put: Trouble['put'],
  fits?: Trouble['fits'],
  often?: number,
];
export const lines = (family: Trouble['family'], all: readonly Line[]): Trouble[] =>
  all.map(([id, called, put, fits, often]) => ({
    id,
    family,
    called: typeof called === 'string' ? [called] : called,
    put,
    ...(fits ? { fits } : {}),
    ...(often ? { often } : {}),
  }));

export const link =
  (name: LinkName, from?: number): Trouble['put'] =>
  (y, d) => {
    y.ohms[name] = bad(d, from);
  };
export const open =
  (name: LinkName): Trouble['put'] =>
  (y) => {
    y.ohms[name] = BROKEN;
  };

/** What a dead short or ground at a motor does before anybody comes: a pole out, a fuse blown, or nothing yet. */
export function afterShort(y: Yard, ohms: number, chance: Chance): void {
  if (ohms > 6) return;
  if (y.design.fused && chance.yes(0.5)) {
    if (chance.yes(0.5)) y.ohms.fuse1 = BROKEN;
    else y.ohms.fuse2 = BROKEN;
    return;
  }
  trip(y);
}

export function trip(y: Yard): void {
  y.breakerTripped = true;
  y.ohms.breaker1 = BROKEN;
  y.ohms.breaker2 = BROKEN;
}

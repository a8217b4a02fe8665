import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Dice } from './dice.ts';
import type { Build, Plant } from './plant.ts';

/** Something that goes wrong with a unit. */
export interface Cause {
  readonly id: string;
  /** What a careful technician may call it, in the diagnosis' own list. */
  readonly called: readonly FaultId[];
  /** How often against the others; 1 where nothing is said. */
  readonly weight?: number;
  /** Units that can have it. */
  readonly fits?: (build: Build) => boolean;
  /** Nobody would call for cooling: it is found by the way. */
  readonly quiet?: true;
  /** @param severity 0 to 1, from barely to entirely */
  readonly put: (plant: Plant, severity: number, dice: Dice) => void;
}

/** Arcsine distributed, and one in seven entirely: the ends are where faults are, not the middle. */
export function drawSeverity(dice: Dice): number {
  return dice.yes(0.15) ? 1 : Math.sin((Math.PI / 2) * dice.roll()) ** 2;
}

/** Between two values of a quantity that spans decades. */
export const decades = (from: number, to: number, share: number): number => from * (to / from) ** share;

/** Ohms of a contact that fails: a bad one to begin with, then none at all. */
export const failing = (severity: number, worst = 40): number =>
  severity > 0.7 ? 1e9 : decades(0.6, worst, severity / 0.7);

/** Of a wire in the control cable: corroded, or broken. */
export const fraying = (severity: number): number => (severity > 0.45 ? 1e9 : decades(60, 2000, severity / 0.45));

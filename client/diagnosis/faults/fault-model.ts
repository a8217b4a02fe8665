import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Random } from '../random.ts';
import type { Motor } from '../unit/motor.ts';
import type { Unit } from '../unit/unit.ts';

/** What a fault is to the diagnosis. */
export interface FaultModel {
  /**
   * How often it stands behind "does not cool", relative to the others. No published table splits residential calls
   * this finely; these are our own weights after common practice (capacitors, contactors, drain floats, leaks and
   * dirt lead; see `source` where something narrower is known).
   */
  readonly weight: number;
  readonly source: string;
  /**
   * Its readings move a long way with its severity, so that it needs more draws than the others to leave no gap.
   */
  readonly graded: boolean;
  /** What it costs to mend it where it was not the cause, as minutes: the work, the part, the next visit, the trust. */
  readonly lostMinutes: number;
  /** False when the profile rules it out. */
  readonly possible?: (profile: UnitProfile) => boolean;
  /** Puts the fault into a healthy unit. The first number drawn is its severity. */
  readonly apply: (unit: Unit, random: Random) => void;
}

export const PRACTICE = 'common practice, our weight';
/** Of most faults (our figure). What is only cleaned or reset costs least, a compressor most. */
export const USUAL_LOSS = 360;
export const OPEN = Number.POSITIVE_INFINITY;

/** A fault that only sets fields of the unit. */
export function put(change: Partial<Unit>): FaultModel['apply'] {
  return (unit) => {
    // Pairs are copied: two units must never share one.
    const own = Object.entries(change).map(([field, value]) => [field, Array.isArray(value) ? [...value] : value]);
    Object.assign(unit, Object.fromEntries(own));
  };
}

/** A fault that only sets fields of one of the unit's motors. */
export function putMotor(motor: 'compressor' | 'fan' | 'blower', change: Partial<Motor>): FaultModel['apply'] {
  return (unit) => {
    Object.assign(unit[motor], change);
  };
}

/** A fault that opens one leg of a pair of conductors. */
export function openLeg(pair: 'breaker' | 'fuse', leg: 0 | 1): FaultModel['apply'] {
  return (unit) => {
    unit[pair][leg] = OPEN;
  };
}

import { Dice } from '../../client/practice/plant/dice.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import { drawRatings, type Ratings } from '../simulator/hidden-unit.ts';
import { canHave } from '../simulator/hide-fault.ts';

/** Twelve faults of all families: supply, contactor, capacitors, motors, control, air and refrigerant. */
export const TWELVE_FAULTS = [
  'fan-capacitor-weak',
  'contactor-stuck-closed',
  'Y-wire-broken-outdoors',
  'line-fuse-1-open',
  'contactor-pole-1-burnt',
  'contactor-coil-open',
  'herm-capacitor-weak',
  'fan-bearings-seized',
  'float-switch-open',
  'blower-motor-open',
  'condenser-dirty',
  'low-charge',
] as const satisfies readonly FaultId[];

/** The first design of the simulator's that can have the fault, from a seed on. */
export function designWith(fault: FaultId, from = 4): { readonly seed: number; readonly ratings: Ratings } {
  for (let seed = from; ; seed += 1) {
    const ratings = drawRatings(new Dice(seed));
    if (canHave(fault, ratings)) return { seed, ratings };
  }
}

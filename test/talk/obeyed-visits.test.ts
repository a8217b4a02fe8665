import { describe, expect, it } from 'vitest';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import { LONG } from '../how-much.ts';
import { Dice } from '../simulator/dice.ts';
import { drawRatings, type Ratings } from '../simulator/hidden-unit.ts';
import { canHave } from '../simulator/hide-fault.ts';
import { obey, printed } from './obeying-technician.ts';

const SHORT: readonly FaultId[] = ['fan-capacitor-weak', 'contactor-stuck-closed', 'Y-wire-broken-outdoors'];
const ALL: readonly FaultId[] = [
  ...SHORT,
  'line-fuse-1-open',
  'contactor-pole-1-burnt',
  'contactor-coil-open',
  'herm-capacitor-weak',
  'fan-bearings-seized',
  'float-switch-open',
  'blower-motor-open',
  'condenser-dirty',
];

/** The first design of the simulator's that can have the fault. */
function designWith(fault: FaultId): { readonly seed: number; readonly ratings: Ratings } {
  for (let seed = 4; ; seed += 1) {
    const ratings = drawRatings(new Dice(seed));
    if (canHave(fault, ratings)) return { seed, ratings };
  }
}

describe('a technician who does what is asked and no more', () => {
  it.each(LONG ? ALL : SHORT)(
    'is asked for nothing that cannot be done, and nothing twice: %s',
    { timeout: 120_000 },
    async (fault) => {
      const { seed, ratings } = designWith(fault);
      const visit = await obey(fault, ratings, seed);
      expect(visit.faults, printed(visit)).toEqual([]);
      expect(visit.closed).toBe(true);
      expect(visit.found).toBe(fault);
    },
  );
});

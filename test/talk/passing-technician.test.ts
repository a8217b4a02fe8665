import { describe, expect, it } from 'vitest';
import { LONG } from '../how-much.ts';
import { obey, printed } from './obeying-technician.ts';
import { designWith, TWELVE_FAULTS } from './twelve-faults.ts';

const SHARES = [0.1, 0.25, 0.5];

/** Of what is asked a share is passed or cannot be reached: what is left is still asked in an order that can be done. */
describe('a technician who passes a part of what is asked', () => {
  const visits = (LONG ? TWELVE_FAULTS : TWELVE_FAULTS.slice(0, 4)).flatMap((fault) =>
    (LONG ? [1, 2, 3, 4, 5, 6] : [1]).map((round) => [fault, round] as const),
  );
  it.each(visits)(
    'is asked nothing again in the same state, no switch back and forth, and comes to an end: %s, %i',
    { timeout: 120_000 },
    async (fault, round) => {
      const { seed, ratings } = designWith(fault, 4 * round);
      const visit = await obey(fault, ratings, seed, { passes: SHARES[round % SHARES.length]! });
      expect(visit.faults, printed(visit)).toEqual([]);
      expect(visit.closed, printed(visit)).toBe(true);
    },
  );
});

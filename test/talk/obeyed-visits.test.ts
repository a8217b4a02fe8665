import { describe, expect, it } from 'vitest';
import { LONG } from '../how-much.ts';
import { obey, printed } from './obeying-technician.ts';
import { designWith, TWELVE_FAULTS } from './twelve-faults.ts';

describe('a technician who does what is asked and no more', () => {
  it.each(LONG ? TWELVE_FAULTS : TWELVE_FAULTS.slice(0, 3))(
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

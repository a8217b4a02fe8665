import { describe, expect, it } from 'vitest';
import { median } from '../bench/figures.ts';
import { LONG } from '../how-much.ts';
import { obey, printed } from './obeying-technician.ts';
import { TALK_LIMITS, type Talk, talkOf } from './talk-of.ts';
import { designWith, TWELVE_FAULTS } from './twelve-faults.ts';

describe('a technician who does what is asked and no more', () => {
  const talks: Talk[] = [];

  it.each(LONG ? TWELVE_FAULTS : TWELVE_FAULTS.filter((_, at) => at % 4 === 1))(
    'is asked for nothing that cannot be done, nothing twice, and little: %s',
    { timeout: 120_000 },
    async (fault) => {
      const { seed, ratings } = designWith(fault);
      const visit = await obey(fault, ratings, seed);
      expect(visit.faults, printed(visit)).toEqual([]);
      expect(visit.closed).toBe(true);
      expect(visit.found).toBe(fault);
      const talk = talkOf(visit);
      talks.push(talk);
      const { most, longest, longestAfter } = TALK_LIMITS;
      expect(talk.utterances).toBeLessThanOrEqual(most.utterances);
      expect(talk.words).toBeLessThanOrEqual(most.words);
      expect(talk.seconds).toBeLessThanOrEqual(most.seconds);
      expect(talk.longest, printed(visit)).toBeLessThanOrEqual(longest);
      expect(talk.longestAfter, printed(visit)).toBeLessThanOrEqual(longestAfter);
    },
  );

  // In the short run the median is that of three visits, every fourth of the twelve.
  it.each(['utterances', 'words', 'seconds'] as const)('hears and says no more in the median: %s', (what) => {
    expect(talks.length).toBeGreaterThan(0);
    expect(median(talks.map((talk) => talk[what]))).toBeLessThanOrEqual(TALK_LIMITS.median[what]);
  });
});

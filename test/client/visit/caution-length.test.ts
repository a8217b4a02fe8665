import { describe, expect, it } from 'vitest';
import { CAUTIONS, HAZARD_WORDS } from '../../../client/words/talk/caution-words.ts';
import { speak } from '../../../fixtures/speak.ts';

/** Seconds that the offline voice takes at its normal rate. */
function seconds(words: string): number {
  return speak({ name: 'slt' }, words).length / 16_000;
}

describe('spoken by the offline voice', () => {
  it.each(CAUTIONS)('the caution "$id" takes at most 8 s the first time and 2 s when repeated', ({ words, again }) => {
    expect(seconds(words)).toBeLessThanOrEqual(8);
    expect(seconds(again)).toBeLessThanOrEqual(2);
  });

  it.each(Object.entries(HAZARD_WORDS))('what the hazard "%s" adds takes at most 5 s', (_, words) => {
    expect(seconds(words)).toBeLessThanOrEqual(5);
  });

  it('measures: a caution said twice takes about twice as long', () => {
    const { words } = CAUTIONS[0];
    expect(seconds(`${words} ${words}`) / seconds(words)).toBeCloseTo(2, 0);
  });
});

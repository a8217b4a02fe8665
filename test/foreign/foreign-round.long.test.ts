import { describe, expect, it } from 'vitest';
import { surelyWrong } from '../simulator/side-by-side.ts';
import { playForeignRound } from './foreign-round.ts';

/** Small seeded rounds; the floors lie below what the full report measures, by what so few cases can scatter. */
describe('the diagnosis before the third simulator', () => {
  it('finds what texts tell, and is sure of nothing false', () => {
    const { outcomes } = playForeignRound('foreign-stories', { cases: 0, designs: 0, seed: 1 });
    const missed = outcomes.filter((o) => !o.right).map((o) => `${o.causes} named ${o.named}`);
    expect(missed.length, missed.join('; ')).toBeLessThanOrEqual(2);
    expect(outcomes.filter(surelyWrong)).toEqual([]);
  }, 240_000);

  it('finds most of its list in units that it was not made from, and never answers what it was told with a refusal', () => {
    const { outcomes } = playForeignRound('foreign-careful', { cases: 30, designs: 3, seed: 4 });
    expect(outcomes.filter((o) => o.right).length).toBeGreaterThanOrEqual(20);
    expect(outcomes.flatMap((o) => o.refused)).toEqual([]);
  }, 240_000);
});

import { describe, expect, it } from 'vitest';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const words = (visit: TypedVisit) =>
  foldVisit(visit.bodies.map((body) => JSON.parse(body) as VisitEvent)).readings.map(({ judged }) => judged?.word);

// 29 CFR 1910.333(b)(2)(iv)(B) wants a circuit to be verified as de-energised: what a place shows that was told off is
// no value to be fitted to what it shows when fed.
describe('a voltage where power was told off', () => {
  it.each([
    [['outdoor disconnect is pulled and locked'], 'leg one to ground one eighteen'],
    [['outdoor disconnect is pulled and locked'], 'leg one to leg two two forty'],
    [['outdoor disconnect is pulled and locked', 'leg one to ground one eighteen'], 'leg two to ground one nineteen'],
    [['breaker at the panel is off and locked'], 'leg one to ground one eighteen'],
  ])('after %j never fits: %s', async (before, line) => {
    const visit = await TypedVisit.open();
    await visit.type(...before, line);
    expect(words(visit).at(-1)).not.toBe('fits');
    expect(visit.of('reading.judged').map(({ judged }) => judged.word)).not.toContain('fits');
  });

  it('nor where it was proven dead, or as a value set right', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, ...TO_PROVEN_DEAD);
    const before = visit.of('reading.judged').length;
    await visit.type('leg one to ground zero', 'correction one eighteen');
    expect(visit.of('reading.corrected').at(-1)?.to.value).toBe(118);
    expect(
      visit
        .of('reading.judged')
        .slice(before)
        .map(({ judged }) => judged.word),
    ).not.toContain('fits');
  });

  it('while one that is told of a unit that is fed is judged as before', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen');
    expect(words(visit)).toEqual(['fits']);
  });
});

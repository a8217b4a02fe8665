import { describe, expect, it } from 'vitest';
import { TypedVisit } from './typed-visit.ts';

/** A unit without supply has no live leg to prove its ground with: what is advised can be done (7-conduct v). */
const ARRIVED = ['customer agrees', 'the plate is unreadable', 'meter is category three', 'outdoor air ninety four'];
const PROOF = [
  'meter two forty',
  'leg one to ground zero',
  'leg two to ground zero',
  'leg one to leg two zero',
  'T one to ground zero',
  'T two to ground zero',
  'T one to T two zero',
  'meter two forty',
  'herm section zero volts dc',
  'fan section zero volts dc',
];
const outdoors = ({ run }: TypedVisit) => run.context.energy['outdoor-load'];
const warned = (visit: TypedVisit) => visit.of('hazard.warned').map(({ words }) => words);

async function proved(...before: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVED, ...before, ...PROOF);
  return visit;
}

describe('a unit that has no live leg', () => {
  it('is proven dead behind a tripped breaker, its ground told not proven', async () => {
    const visit = await proved('breaker is tripped', 'no call', 'panel breaker is off and locked');
    expect(outdoors(visit)).toBe('proven-dead');
    expect(warned(visit).join(' ')).toContain('this ground is not proven');
  });

  it('is proven dead where both legs read dead to ground and to each other while nothing was opened', async () => {
    const visit = await proved(
      'no call',
      'leg one to ground zero',
      'leg two to ground zero',
      'leg one to leg two zero',
      'panel breaker is off and locked',
    );
    expect(outdoors(visit)).toBe('proven-dead');
    expect(warned(visit).join(' ')).toContain('this ground is not proven');
  });

  it.each([
    ['one leg alone', ['no call', 'leg one to ground zero', 'panel breaker is off and locked']],
    ['a breaker reset since', ['breaker is tripped', 'no call', 'breaker is reset', 'panel breaker is off and locked']],
  ])('is not taken for one by %s', async (_, before) => {
    const visit = await proved(...before);
    expect(outdoors(visit)).not.toBe('proven-dead');
    expect(visit.of('proof.refused').length).toBeGreaterThan(0);
  });
});

import { describe, expect, it } from 'vitest';
import { TypedVisit } from './typed-visit.ts';

/** A unit without supply has no live leg to prove its ground with: what is advised can be done (7-conduct v). */
const ARRIVED = ['customer agrees', 'the plate is unreadable', 'meter is category three', 'outdoor air ninety four'];
const SUPPLY_DEAD = [
  'disconnect line one to ground zero',
  'disconnect line two to ground zero',
  'disconnect line one to disconnect line two zero',
];
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
    const visit = await proved('no call', ...SUPPLY_DEAD, 'panel breaker is off and locked');
    expect(outdoors(visit)).toBe('proven-dead');
    expect(warned(visit).join(' ')).toContain('this ground is not proven');
  });

  it.each([
    ['one leg alone', ['no call', 'disconnect line one to ground zero', 'panel breaker is off and locked']],
    [
      'legs of the unit, for its disconnect may be out',
      [
        'no call',
        'leg one to ground zero',
        'leg two to ground zero',
        'leg one to leg two zero',
        'panel breaker is off and locked',
      ],
    ],
    [
      'a supply that read dead before it read a leg',
      ['no call', ...SUPPLY_DEAD, 'disconnect line two to ground sixty two', 'yes', 'panel breaker is off and locked'],
    ],
    ['a supply that was read behind its open breaker', ['no call', 'panel breaker is off and locked', ...SUPPLY_DEAD]],
    [
      'a supply that was read before its breaker was closed',
      ['no call', ...SUPPLY_DEAD, 'breaker is reset', 'panel breaker is off and locked'],
    ],
    [
      'a trip behind which a leg was read since',
      ['breaker is tripped', 'no call', 'leg one to ground sixty two', 'yes', 'panel breaker is off and locked'],
    ],
    ['a breaker reset since', ['breaker is tripped', 'no call', 'breaker is reset', 'panel breaker is off and locked']],
  ])('is not taken for one by %s', async (_, before) => {
    const visit = await proved(...before);
    expect(outdoors(visit)).not.toBe('proven-dead');
    expect(visit.of('proof.refused').length).toBeGreaterThan(0);
  });

  it.each([
    'breaker is back on',
    'I flipped the breaker back on',
    'somebody closed the panel breaker',
    'breaker is not tripped',
    'disconnect line one to ground one twenty',
    'utility restored service',
  ])('is proven no more once there may be one: "%s"', async (line) => {
    const behindTwo = ['disconnect is pulled and locked', 'panel breaker is off and locked'];
    const visit = await proved('breaker is tripped', 'no call', ...behindTwo);
    expect(outdoors(visit)).toBe('proven-dead');
    await visit.type(line);
    expect(['unknown', 'live']).toContain(outdoors(visit));
  });
});

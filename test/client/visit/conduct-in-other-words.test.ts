import { describe, expect, it } from 'vitest';
import { TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** What is told of dangers in words that are no phrase of the grammar. Common practice; 7-conduct j, k, l, r. */
async function told(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}
const warnings = (visit: TypedVisit) =>
  visit
    .of('prompt.said')
    .filter(({ kind }) => kind === 'warning')
    .map(({ text }) => text);

describe('a breaker that is reset more than once', () => {
  it.each([
    ['breaker is tripped', 'breaker is reset', 'I flipped it again'],
    ['breaker is tripped', 'breaker is reset', 'tried the breaker one more time'],
    ['breaker had kicked off', 'flipped it back on', 'gave it another try'],
    ['the breaker was tripped so I reset it', 'it tripped again', 'I reset it a second time'],
  ])('is warned of: %s, %s, %s', async (...lines) => {
    const visit = await told(...lines);
    expect(warnings(visit).join(' ')).toContain('Reset two');
  });

  it('counts none that was not done, and none where nothing tripped', async () => {
    const before = await told('breaker is tripped', 'breaker is reset');
    const count = (visit: TypedVisit) => visit.of('switch.reported').filter(({ state }) => state === 'closed').length;
    const denied = await told('breaker is tripped', 'breaker is reset', 'I did not flip it again');
    expect(count(denied)).toBe(count(before));
    expect(count(await told('I reset it again'))).toBe(0);
  });

  it('wants the windings first where only its trip was told', async () => {
    const visit = await told('the breaker kicked off on me');
    expect(warnings(visit)).toEqual([
      'The breaker tripped: each winding to its shell, while dead, before power returns.',
    ]);
  });
});

describe('a fuse or breaker too large for the unit', () => {
  // NEC 440.22: 225 percent of 15.4 A and the other load of 1.2 A make 35.9 A; the library's plate is not read.
  it.each([
    'fuses are sixties',
    'put ninety amp fuses in',
    'I stuck a pair of 60 amp fuses in there',
    'the breaker is a fifty',
  ])('is refused with the figures: "%s"', async (line) => {
    const visit = await told(line);
    expect(visit.mouth.last()).toContain('35.9');
    expect(visit.of('part.doubted').length).toBeGreaterThan(0);
  });

  it.each(['fuses are thirties', 'the fuses were sixties', 'it calls for sixty amp fuses', 'fuse is blown'])(
    'is not what "%s" tells',
    async (line) => {
      expect((await told(line)).of('part.doubted')).toHaveLength(0);
    },
  );
});

describe('hands where they may be hurt, in rough words', () => {
  it.each([
    'mashed the contactor in',
    'I shoved the contactor in with my finger',
    'stuck a stick on the contactor',
    'used my screwdriver to push the contactor',
  ])('a contactor pressed by hand: "%s"', async (line) => {
    expect(warnings(await told(line)).join(' ')).toContain('Never push a contactor in');
  });

  it.each([
    'wrapped foil around the fuse',
    'stuck a penny behind the fuse',
    'put a jumper across the fuse',
    'bypassed the low pressure',
  ])('what protects is bypassed: "%s"', async (line) => {
    expect(warnings(await told(line)).join(' ')).toContain('bypassed protects nothing');
  });

  it.each(["brown wire's off", 'I unhooked the brown'])(
    'a wire off a unit that is not proven dead: "%s"',
    async (line) => {
      const visit = await told(line);
      expect(warnings(visit).join(' ')).toContain('Outdoor unit: not proven dead.');
      expect(visit.of('work.unproven').map(({ zone }) => zone)).toContain('outdoor-load');
    },
  );
});

describe('a refrigerant circuit that was opened', () => {
  it.each(['sweated in a new drier', 'I opened the refrigerant lines for it', 'put in a nw filter dryer'])(
    'is warned of where power comes before it is closed, answered or not: "%s"',
    async (line) => {
      const visit = await told(...TO_PROVEN_DEAD, line, 'outdoor disconnect is back in');
      expect(visit.of('circuit.early')).toHaveLength(1);
    },
  );

  it('is evacuated again where its vacuum was broken with nitrogen', async () => {
    const visit = await told(...TO_PROVEN_DEAD, 'fitted a filter drier', 'recovered ten ounces', 'nitrogen one fifty');
    await visit.later(15);
    await visit.type('nitrogen one fifty', 'three hundred microns', 'vacuum pump is isolated');
    await visit.later(15);
    await visit.type('three hundred fifty microns');
    expect(visit.run.context.refrigerantWork.stood).toBe(true);
    await visit.type('broke the vacuum with nitrogen');
    expect(visit.run.context.refrigerantWork).toMatchObject({ inVacuum: false });
    expect(visit.run.context.refrigerantWork.stood).toBeUndefined();
    await visit.type('outdoor disconnect is back in');
    expect(visit.of('circuit.early').at(-1)?.lacks).toBe('evacuated');
  });
});

describe('a circuit that is let out, or run or tested in a vacuum', () => {
  it.each([
    ['burped the charge out', 'Refrigerant is recovered'],
    ['dumping the charge to atmosphere', 'Refrigerant is recovered'],
    ['started it in a vacuum', 'in a vacuum'],
    ['meggered it in a vacuum', 'in a vacuum'],
  ])('is warned of: "%s"', async (line, words) => {
    expect(
      warnings(await told(line))
        .join(' ')
        .toLowerCase(),
    ).toContain(words.toLowerCase());
  });
});

import { describe, expect, it } from 'vitest';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const FITTED = [
  ...ARRIVAL,
  'compressor runs then trips',
  ...TO_PROVEN_DEAD,
  'fan section one point one microfarads on the bench',
  'fan section one point two microfarads on the bench',
  'fitted a forty five over five dual capacitor four forty volt',
  'covers are on',
  'live',
  'outdoor disconnect is back in',
  'thermostat is calling',
] as const;

/** What was said since. */
async function said(visit: TypedVisit, ...lines: readonly string[]): Promise<readonly string[]> {
  const from = visit.mouth.said.length;
  await visit.type(...lines);
  return visit.mouth.said.slice(from).map(({ text }) => text);
}

describe('what comes next, asked while a question stands', () => {
  it.each([
    ['of a reading', [...ARRIVAL.slice(0, 1), 'leg one to ground one thirty five']],
    [
      'of a reading, with a caution due',
      [
        ...ARRIVAL,
        'leg one to ground one thirty five',
        'compressor runs then trips',
        'leg two to ground one thirty five',
      ],
    ],
    ['of a switch', [...ARRIVAL, 'I pulled the disconnect']],
    ['of a place', ['customer agrees', 'pass', 'three', 'outdoor air ninety four', 'return air eighty', 'twenty six']],
  ] as const)('lets it go and says the step once: %s', async (_, lines) => {
    const visit = await TypedVisit.open();
    await visit.type(...lines);
    expect(visit.run.context.questions.length).toBeGreaterThan(0);
    const told = await said(visit, 'what next');
    expect(told.join(' ')).not.toContain('A question stands open');
    expect(told[0]).toMatch(/left out(?:\.|: say which\.)$|^Left out\.$/);
    expect(new Set(told).size, told.join(' // ')).toBe(told.length);
    expect(visit.run.context.questions).toEqual([]);
  });
});

describe('a number that is said to a question of another kind', () => {
  it('is not kept to be asked for later', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', 'I pulled the disconnect', 'zero', 'pass');
    const told = await said(visit, 'what next', 'okay');
    expect(told.join(' ')).not.toMatch(/[Zz]ero: which place/);
    expect(visit.run.context.questions).toEqual([]);
  });

  it('takes the turn of the one whose place was asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type('customer agrees', 'pass', 'three', 'outdoor air ninety four', 'return air eighty');
    expect(await said(visit, 'twenty six')).toEqual(['Twenty six: which place was that?']);
    expect(await said(visit, 'twenty eight')).toEqual(['Twenty eight: which place was that?']);
    expect(visit.run.context.questions).toHaveLength(1);
  });
});

describe('going back', () => {
  it('says no empty sentence, however far', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      'customer agrees',
      'model a b c one two three',
      'serial one two three four five',
      'pass',
      'three',
      'ninety four',
      'eighty',
    );
    for (let round = 0; round < 10; round += 1) {
      for (const text of await said(visit, 'go back')) expect(text).not.toBe('');
    }
  });
});

describe('where the visit stands', () => {
  it('counts the readings that stand, and none that was taken back', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four degrees', 'return air eighty degrees', 'take that back');
    expect(standingReadings(visit.run.context)).toHaveLength(1);
    expect((await said(visit, 'status'))[0]).toMatch(/^One reading\. /);
  });
});

describe('a repair that did not cure', () => {
  it('is told so, with what is likeliest now', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...FITTED, 'outdoor fan is not turning', 'compressor amps zero');
    const told = await said(visit, 'fan amps zero');
    expect(told.at(-1)).toMatch(/^Not proved: not seen running\. Most likely now: /);
    expect((await said(visit, 'what next')).at(-1)).toBe(told.at(-1));
  });

  it('was none where a filter was changed while something else is sought', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', 'fitted a new filter');
    expect(visit.run.context.phase).toBe('testing');
    expect(visit.run.context.finding).toBeUndefined();
    expect(visit.of('part.fitted')).toHaveLength(1);
  });
});

describe('a place that is told to be fed, without its number', () => {
  it.each(['leg one to ground hot', 'leg two is live', 'T one to ground is still hot'])(
    'is asked for it: %s',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type(...ARRIVAL);
      expect((await said(visit, line)).at(-1)).toMatch(/: what does it read\?$/);
      expect(visit.of('reading.logged').filter(({ reading }) => reading.quantity === 'voltage')).toEqual([]);
    },
  );
});

describe('the meter named with its number', () => {
  it('is no reading of the place that is asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', 'live');
    expect(visit.run.context.step?.ask.kind).toBe('reading');
    await visit.type('meter two forty');
    expect(visit.of('reading.logged').filter(({ reading }) => reading.value === 240)).toEqual([]);
  });
});

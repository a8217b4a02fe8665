import { describe, expect, it } from 'vitest';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** 225 % of 15.4 A and 1.2 A for the fan, by hand: 34.65 + 1.2 = 35.85 A (NEC 440.22(A), from memory). */
const MOST = '35.9';

describe('a fuse or breaker above what the unit allows', () => {
  const OVER: Readonly<Record<string, readonly string[]>> = {
    'its plate': ['nameplate max fuse thirty amps', 'fitted a thirty five amp fuse', 'the nameplate allows at most 30'],
    'its plate, as a breaker': ['nameplate max fuse thirty amps', 'fitted a forty amp breaker', 'allows at most 30'],
    '225 percent, the plate unread': ['fan is not turning', 'fitted a forty amp fuse', `for the fan is ${MOST}`],
    '225 percent, as a breaker': ['fan is not turning', 'fitted a sixty amp breaker', `for the fan is ${MOST}`],
  };

  it.each(Object.entries(OVER))(
    '%s: is refused aloud with the figures',
    async (_, [before = '', fitted = '', figures]) => {
      const visit = await TypedVisit.open();
      await visit.type(...TO_PROVEN_DEAD, before, fitted);
      expect(visit.mouth.last()).toMatch(/^Refused\. /);
      expect(visit.mouth.last()).toContain(figures);
      expect(visit.of('part.fitted')).toEqual([]);
    },
  );

  it.each(['yes', 'yes it is', 'note', 'note yes', 'note ok do it anyway', 'done'])(
    'is not kept by a word that is no reason: %s',
    async (sentence) => {
      const visit = await TypedVisit.open();
      await visit.type('fitted a sixty amp breaker', sentence);
      expect(visit.of('part.fitted')).toEqual([]);
      expect(visit.mouth.last()).toBe('A yes is not enough. Say note and the reason.');
    },
  );

  it('is not kept by a key either', async () => {
    const visit = await TypedVisit.open();
    await visit.type('fitted a sixty amp breaker');
    visit.run.touch('yes');
    await visit.run.settled();
    expect(visit.of('part.fitted')).toEqual([]);
  });

  it('is kept for a reason that was spoken, which stands in the record and open at the close', async () => {
    const visit = await TypedVisit.open();
    await visit.type('fitted a sixty amp breaker', 'note the maker allows sixty on this one');
    const [part] = toVisitRecord(visit.events()).parts;
    expect(part?.doubts).toEqual([
      expect.stringContaining(MOST),
      'kept all the same: the maker allows sixty on this one',
    ]);
    await visit.type('take that back');
    expect(toVisitRecord(visit.events()).parts).toEqual([]);
  });

  it('is set aside at a no', async () => {
    const visit = await TypedVisit.open();
    await visit.type('fitted a sixty amp breaker', 'no', 'note the maker allows sixty on this one');
    expect(visit.of('part.fitted')).toEqual([]);
  });

  it('is doubted when the plate is read after it', async () => {
    const visit = await TypedVisit.open();
    await visit.type('fitted a thirty five amp fuse');
    expect(visit.of('part.fitted')).toHaveLength(1);
    await visit.type('nameplate max fuse thirty amps');
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain('does not match. It is 35 amps');
    expect(visit.run.context.parts[0]?.doubts).toHaveLength(1);
  });
});

describe('a fuse or breaker within what the unit allows', () => {
  it.each([
    ['fitted a thirty five amp fuse', LIBRARY_UNIT],
    ['fitted a fifteen amp fuse', { ...LIBRARY_UNIT, compressor: { rla: 4, lra: 20 } }],
    ['fitted a sixty amp fuse', { id: 'unread' }],
  ] as const)('is fitted: %s', async (sentence, unit) => {
    const visit = await TypedVisit.open(unit as UnitProfile);
    await visit.type(sentence);
    expect(visit.of('part.fitted')).toHaveLength(1);
  });

  it('by its plate, though 225 percent were less', async () => {
    const visit = await TypedVisit.open();
    await visit.type('nameplate max fuse forty amps', 'fitted a forty amp fuse');
    expect(visit.of('part.fitted')).toHaveLength(1);
  });
});

describe('any other part whose ratings are refused', () => {
  it('is kept at a yes', async () => {
    const visit = await TypedVisit.open();
    await visit.type('fitted a thirty five over five dual capacitor four forty volt', 'yes');
    expect(visit.of('part.fitted')).toHaveLength(1);
  });
});

describe('a fuse that was refused and not told out', () => {
  const left = /Refused and not told out: fuse, sixty amps/;
  const closing = async (...lines: readonly string[]) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'fitted a sixty amp fuse', ...lines, 'finish the visit');
    return JSON.stringify(visit.of('close.refused').at(-1));
  };

  it.each(['no', 'what next', 'fan is not turning'])('holds the close, whatever was said next: %s', async (next) => {
    expect(await closing(next)).toMatch(left);
  });

  it.each([
    ['a smaller one is fitted', 'no', 'fitted a thirty amp fuse'],
    ['it is told out', 'no', 'pulled the fuse'],
    ['it was not so', 'take that back'],
  ])('does not where %s', async (_, ...lines) => {
    expect(await closing(...lines)).not.toMatch(left);
  });
});

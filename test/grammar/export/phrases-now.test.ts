import { describe, expect, it } from 'vitest';
import { findPhrases, type PhraseNow } from '../../../grammar/export/find-phrases.ts';
import { phrasesNow } from '../../../grammar/export/phrases-now.ts';
import { spokenForms } from '../../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { LIBRARY_VISIT, TypedVisit } from '../../client/visit/typed-visit.ts';

const understand = makeUnderstand();
/** Numbers that one place or another reads, among them some that each place can. */
const NUMBERS = [0, 1.1, 5, 8, 24, 44, 58, 75, 118, 240, 342, 400, 1200];

/** The phrase as somebody may say it: with each number, or with words. */
const saidOf = ({ phrase, slot }: PhraseNow): readonly string[] =>
  slot === undefined
    ? [phrase]
    : slot === 'words'
      ? [phrase.replace('…', 'a b c one two three')]
      : NUMBERS.map((value) => phrase.replace('…', spokenForms(value)[0]!));

const isUnderstood = (one: PhraseNow, expectation: Expectation): boolean =>
  saidOf(one).some((text) => understand(text, expectation, { typed: true }).verdict !== 'rejected');

/** What the library visit waits for, moment by moment. */
async function moments(): Promise<ReadonlyMap<string, Expectation>> {
  const visit = await TypedVisit.open();
  const met = new Map<string, Expectation>();
  const keep = () => met.set(JSON.stringify({ ...visit.run.expectation, latest: undefined }), visit.run.expectation);
  for (const line of LIBRARY_VISIT) {
    keep();
    await visit.type(line);
  }
  keep();
  return met;
}

describe('the phrases of the moment', () => {
  it('are each understood where they are offered, in every state of a visit', async () => {
    const lost: string[] = [];
    const met = [...(await moments()).values()];
    expect(met.length).toBeGreaterThan(10);
    for (const expectation of met)
      for (const one of phrasesNow(expectation))
        if (one.group === 'now' && !isUnderstood(one, expectation))
          lost.push(`${one.phrase} | ${JSON.stringify(expectation)}`);
    // What may be said always does not hang on the moment: where nothing is asked, and at one where much is.
    for (const expectation of [{ readings: [] }, met[Math.floor(met.length / 2)]!])
      for (const one of phrasesNow(expectation)) if (!isUnderstood(one, expectation)) lost.push(one.phrase);
    expect(lost).toEqual([]);
  });

  it('begin with what is asked', async () => {
    for (const expectation of (await moments()).values()) {
      const [top] = phrasesNow(expectation);
      const isAsked = expectation.readings.length > 0 || (expectation.answers ?? []).length > 0;
      if (isAsked) expect(top?.group).toBe('now');
    }
  });

  it.each([
    ['voltage', 'L1 ground', { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] }, 'voltage'],
    ['temperature', 'supply air', { readings: [{ quantity: 'temperature', at: ['supply-air'] }] }, 'temperature'],
  ] as const)('mean what is asked: %s at %s', (_quantity, _at, expectation, quantity) => {
    const asked = phrasesNow(expectation).filter(({ group }) => group === 'now');
    expect(asked.length).toBeGreaterThan(1);
    for (const one of asked) {
      const meant = saidOf(one).map((text) => understand(text, expectation, { typed: true }).meaning);
      expect(
        meant.some((meaning) => meaning.kind === 'reading' && meaning.reading.quantity === quantity),
        one.phrase,
      ).toBe(true);
    }
  });

  it('suggest no value', () => {
    for (const { phrase, slot } of phrasesNow({ readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] }))
      if (slot === 'number') expect(phrase).toMatch(/(^| )…$/);
  });

  it('are found by the beginnings of their words, in any order', () => {
    const all = phrasesNow({ readings: [] });
    const found = findPhrases(all, 'press suct').map(({ phrase }) => phrase);
    expect(found).toContain('suction pressure …');
    expect(found.length).toBeLessThan(all.length / 10);
    expect(findPhrases(all, '')).toEqual(all);
    expect(findPhrases(all, 'zzz')).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { NUMBER_RULES } from '../../../grammar/phrases/languages/english/numbers/number-rules.ts';
import { readNumber } from '../../../grammar/phrases/languages/english/numbers/read-number.ts';
import { sayDigits, sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import { spokenForms, spokenWholes } from '../../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import { twinOf, twinOfNumeral } from '../../../grammar/phrases/languages/english/numbers/twins.ts';
import { NUMBER_WORDS } from '../../../grammar/phrases/languages/english/words/number-words.ts';
import { WRITTEN_ENGLISH } from '../../../grammar/phrases/languages/english/written-english.ts';
import { match } from '../../../grammar/phrases/match.ts';
import { Network } from '../../../grammar/phrases/network.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';

const read = (text: string): number | undefined => readNumber(text.split(' '))?.value;

describe('numbers in words', () => {
  it('reads every spoken form of every whole number 0…9999 as that number', () => {
    for (let value = 0; value <= 9999; value += 1) {
      for (const form of spokenWholes(value)) expect(read(form), form).toBe(value);
    }
  });

  it('reads every spoken form of every tenth 0…999.9 as that number', () => {
    for (let tenths = 0; tenths <= 9999; tenths += 1) {
      const value = tenths / 10;
      for (const form of spokenForms(value)) expect(read(form), form).toBe(value);
    }
  });

  it('gives no two whole numbers the same words', () => {
    const owners = new Map<string, number>();
    for (let value = 0; value <= 9999; value += 1) {
      for (const form of spokenWholes(value)) {
        expect(owners.get(form), form).toBeUndefined();
        owners.set(form, value);
      }
    }
    expect(owners.size).toBeGreaterThan(60_000);
  });

  it('says every number so that it is read back the same', () => {
    for (let tenths = -500; tenths <= 99_990; tenths += 7) {
      const value = tenths / 10;
      expect(read(sayNumber(value)), sayNumber(value)).toBe(value === 0 ? 0 : value);
    }
    for (let value = 0; value <= 9999; value += 1) expect(read(sayDigits(value))).toBe(value);
  });

  it('takes every form in its network', () => {
    const network = new Network(NUMBER_RULES, 'number', ENGLISH);
    for (let tenths = 0; tenths <= 99_990; tenths += 37) {
      for (const form of spokenForms(tenths / 10)) {
        expect(match(network, tokenise(form, WRITTEN_ENGLISH))[0]?.cost, form).toBe(0);
      }
    }
  });
});

describe('one documented reading for what English leaves open', () => {
  it.each([
    ['one twenty two point five', 122.5],
    ['one eighteen', 118],
    ['one one eight', 118],
    ['two oh eight', 208],
    ['one oh five point two', 105.2],
    ['twelve fifty', 1250],
    ['twelve oh five', 1205],
    ['eleven hundred', 1100],
    ['eleven hundred and fifty', 1150],
    ['two forty point three', 240.3],
    ['twenty five and a half', 25.5],
    ['twenty five and three quarters', 25.75],
    ['six and a quarter', 6.25],
    ['a half', 0.5],
    ['half', 0.5],
    ['point four', 0.4],
    ['point oh four', 0.04],
    ['oh point five', 0.5],
    ['point fifteen', 0.15],
    ['forty four point fifteen', 44.15],
    ['one point twenty five', 1.25],
    ['minus two', -2],
    ['negative two point five', -2.5],
    ['ten below', -10],
    ['five below zero', -5],
    ['minus zero', 0],
    ['a hundred', 100],
    ['hundred eighteen', 118],
    ['a thousand', 1000],
    ['two thousand four fifty', 2450],
    ['twenty eighteen', 2018],
    ['buck twenty', 120],
    ['a buck', 100],
    ['a buck oh five', 105],
    ['one five', 15],
    ['five oh', 50],
    ['nine niner', 99],
    ['twenty seven two', 27.2],
  ])('%s is %d', (text, value) => {
    expect(read(text)).toBe(value);
  });

  it.each(['', 'and', 'forty five five five', 'point', 'one hundred hundred', 'eighteen eighteen eighteen', 'leg one'])(
    '"%s" is no number',
    (text) => {
      expect(read(text)).toBeUndefined();
    },
  );
});

describe('teens and tens that differ by one sound', () => {
  it.each([
    ['one fifteen', 150],
    ['one fifty', 115],
    ['thirteen', 30],
    ['ninety', 19],
    ['two forty', 214],
    ['forty point three', 14.3],
  ])('%s may be %d', (words, twin) => {
    expect(twinOf(words.split(' '))).toBe(twin);
  });

  it.each(['one fifty one', 'ten', 'twenty', 'twelve', 'one one five', 'one twenty', 'two oh eight'])(
    '%s has no twin',
    (words) => {
      expect(twinOf(words.split(' '))).toBeUndefined();
    },
  );

  it('finds the same twins for typed numerals as for their words, and 14 % of 1…600 have one', () => {
    let count = 0;
    for (let value = 1; value <= 600; value += 1) {
      const twin = twinOfNumeral(value);
      expect(twin, String(value)).toBe(twinOf(spokenWholes(value)[0]!.split(' ')));
      if (twin !== undefined) count += 1;
    }
    expect(count / 600).toBeCloseTo(0.14, 2);
  });
});

describe('a number word with one letter wrong', () => {
  const understand = makeUnderstand();
  const known = new Set(NUMBER_WORDS);
  const misspelt = NUMBER_WORDS.filter((word) => word.length >= 4).flatMap((word) =>
    [...word].flatMap((letter, at) => [
      { word, wrong: word.slice(0, at) + word.slice(at + 1) },
      { word, wrong: word.slice(0, at) + (letter === 'x' ? 'y' : 'x') + word.slice(at + 1) },
    ]),
  );

  it('is never repaired to it: no value is logged with the digit that was not said', () => {
    expect(misspelt.length).toBeGreaterThan(200);
    for (const { word, wrong } of misspelt.filter((one) => !known.has(one.wrong))) {
      for (const sentence of [`leg one to ground one ${wrong}`, `leg one to leg two two forty ${wrong}`]) {
        const { verdict, meaning } = understand(sentence);
        if (verdict !== 'logged' || meaning.kind !== 'reading') continue;
        const right = understand(sentence.replace(wrong, word)).meaning;
        expect(right.kind === 'reading' && right.reading.value === meaning.reading.value, sentence).toBe(false);
      }
    }
  });
});

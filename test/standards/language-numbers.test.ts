import { toCardinal as british } from 'n2words/en-GB';
import { toCardinal as american } from 'n2words/en-US';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../grammar/phrases/languages/english/numbers/read-number.ts';
import { spokenWholes } from '../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import { makeUnderstand } from '../../grammar/phrases/understand.ts';

const plainWords = (text: string): string => text.replaceAll('-', ' ').replaceAll(',', '');
const understand = makeUnderstand();

describe('cardinals against n2words, a general number-words library', () => {
  it('are read as the number they name, 0…9999, the American way and the British way', () => {
    for (let value = 0; value <= 9999; value += 1) {
      for (const cardinal of [american(value), british(value)]) {
        expect(readNumber(plainWords(cardinal).split(' '))?.value, cardinal).toBe(value);
      }
    }
  });

  it('stand among the spoken forms of their number', () => {
    for (let value = 0; value <= 9999; value += 1) {
      expect(spokenWholes(value), String(value)).toContain(plainWords(american(value)));
    }
  });
});

/**
 * ICAO Annex 10, volume II, 5.2.1.4.3.1 and CAP 413 chapter 2 (pronunciation of numbers), from memory: each digit has a
 * word of its own ("tree", "fower", "fife", "niner"), transmitted one by one; "decimal" for the point; whole hundreds
 * and thousands as such.
 */
describe('numbers as aviation speaks them (ICAO Annex 10, CAP 413)', () => {
  it.each([
    ['zero', 0],
    ['wun', 1],
    ['too', 2],
    ['tree', 3],
    ['fower', 4],
    ['fife', 5],
    ['six', 6],
    ['seven', 7],
    ['ait', 8],
    ['niner', 9],
    ['one zero', 10],
    ['seven fife', 75],
    ['one zero zero', 100],
    ['fife eight tree', 583],
    ['fife tousand', 5000],
    ['one one tousand', 11000],
    ['two fife tousand', 25000],
    ['one one eight decimal one', 118.1],
    ['one two zero decimal tree seven', 120.37],
    ['six hundred', 600],
    ['seven tousand six hundred', 7600],
  ])('"%s" is %d', (words, value) => {
    const { meaning } = understand(`microns ${words}`);
    expect(meaning).toMatchObject({ kind: 'reading', reading: { quantity: 'vacuum', value } });
  });
});

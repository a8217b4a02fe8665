import { describe, expect, it } from 'vitest';
import { readNumber } from '../../../grammar/phrases/languages/english/numbers/read-number.ts';
import { sayDigits, sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';

describe('a number said by Readback', () => {
  it('reads back to itself for every integer 0–9999 and every tenth 0–999.9', () => {
    for (let value = 0; value <= 9999; value++) expect(readNumber(sayNumber(value).split(' '))?.value).toBe(value);
    for (let tenths = 0; tenths <= 9999; tenths++) {
      expect(readNumber(sayNumber(tenths / 10).split(' '))?.value).toBeCloseTo(tenths / 10, 9);
    }
  });

  it('is said the way the trade says it', () => {
    expect([118, 208, 240, 100, 1100, 1250, 1205, 2000, 2005, 0, 15].map(sayNumber)).toEqual([
      'one eighteen',
      'two oh eight',
      'two forty',
      'one hundred',
      'eleven hundred',
      'twelve fifty',
      'twelve oh five',
      'two thousand',
      'two thousand five',
      'zero',
      'fifteen',
    ]);
    expect([0.4, 18.2, 40.25, -2, 0.04].map(sayNumber)).toEqual([
      'point four',
      'eighteen point two',
      'forty point two five',
      'minus two',
      'point oh four',
    ]);
  });

  it('is spelled digit by digit where there was doubt (ICAO Annex 10, volume II, 5.2.1.4)', () => {
    expect([115, 150, 0.9].map(sayDigits)).toEqual(['one one five', 'one five zero', 'zero point nine']);
  });
});

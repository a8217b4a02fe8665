import { describe, expect, it } from 'vitest';
import { csvLines } from '../../../grammar/export/csv-lines.ts';

describe('a cell of CSV', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['@sum(a1)', "'@sum(a1)"],
    ['+x', "'+x"],
    ['-x,y', '"\'-x,y"'],
  ])('that a spreadsheet would reckon with is marked: %s', (text, cell) => {
    expect(csvLines([[text]])).toBe(`${cell}\r\n`);
  });

  it.each([[-3.5], ['-3.5'], ['+4'], ['a=b'], [true]])('that is a number or a plain text stays: %s', (value) => {
    expect(csvLines([[value]])).toBe(`${value}\r\n`);
  });
});

import { describe, expect, test } from 'vitest';
import { FEWEST_READ, READ_ALOUD } from '../../../client/words/talk/read-aloud-words.ts';
import { understand } from '../../../grammar/phrases/understand.ts';

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

describe('what is read aloud to teach an ear', () => {
  test('is twenty numbers and ten orders, each different', () => {
    const numbers = READ_ALOUD.filter(({ expects }) => expects.readings.length > 0);
    expect([numbers.length, READ_ALOUD.length - numbers.length]).toEqual([20, 10]);
    expect(new Set(READ_ALOUD.map(({ words }) => words)).size).toBe(READ_ALOUD.length);
    expect(READ_ALOUD.length).toBeGreaterThan(FEWEST_READ);
  });

  test.each(READ_ALOUD)('"$words" is taken as it is where it is said', ({ words, expects }) => {
    const { verdict, meaning } = understand(words, expects);
    expect(meaning.kind).not.toBe('unclear');
    // What voltage is likely is another question: a number is asked back where it is not.
    if (expects.readings.length > 0) expect([meaning.kind, verdict]).not.toContain('rejected');
    else expect(verdict).toBe('logged');
  });

  test.each(DIGITS)('"%s" is said six times: three to learn from, three to hold that against', (digit) => {
    const times = READ_ALOUD.filter(({ words }) => words.split(' ').includes(digit)).length;
    expect(times).toBeGreaterThanOrEqual(6);
  });
});

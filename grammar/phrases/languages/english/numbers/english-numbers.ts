import type { NumberWords } from '../../../language.ts';
import {
  MINUS_WORDS,
  NUMBER_WORDS,
  POINT_WORDS,
  TEEN_WORDS,
  TENS_WORDS,
  UNIT_WORDS,
  ZERO_WORDS,
} from '../words/number-words.ts';
import { readNumber } from './read-number.ts';
import { twinOf, twinOfNumeral } from './twins.ts';

const MINUS: ReadonlySet<string> = new Set(MINUS_WORDS);

const byValue = new Map<number, string[]>([[0, ['zero']]]);
for (const [word, value] of [...Object.entries(UNIT_WORDS), ...Object.entries(TEEN_WORDS)]) {
  byValue.set(value, [...(byValue.get(value) ?? []), word]);
}

/** English number words, tens before units. */
export const ENGLISH_NUMBERS: NumberWords = {
  all: new Set(NUMBER_WORDS),
  digits: new Set([...Object.keys(UNIT_WORDS), ...ZERO_WORDS]),
  // Behind a digit "oh" begins the rest of a number.
  naughts: new Set(['zero', 'nought', 'aught']),
  letters: new Set(['o', 'oh']),
  points: POINT_WORDS,
  minus: MINUS,
  losable: [...Object.keys(UNIT_WORDS), ...Object.keys(TEEN_WORDS), ...Object.keys(TENS_WORDS), 'hundred'].map(
    (word) => [word],
  ),
  ofPlaces: new Set(['one', 'two']),
  and: 'and',
  read: readNumber,
  negates: (words) => words.some((word) => MINUS.has(word) || word === 'below'),
  wordsFor: (numeral) => byValue.get(numeral) ?? [],
  twin: twinOf,
  twinOfNumeral,
};

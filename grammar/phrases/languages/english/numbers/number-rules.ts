import { alternative, type Expression, type Rules, rule, word } from '../../../expression.ts';
import { pattern } from '../../../pattern.ts';
import { NUMERAL } from '../../../words.ts';
import { MINUS_WORDS, POINT_WORDS, TEEN_WORDS, TENS_WORDS, UNIT_WORDS, ZERO_WORDS } from '../words/number-words.ts';

const anyOf = (words: readonly string[]): Expression => alternative(...words.map(word));

/**
 * Every spoken form of a number the matcher takes. `read-number.ts` says what each is worth; "one twenty two point
 * five" and the like have one reading there. Forms: cardinal ("one hundred and eighteen", "eleven hundred"), pairs the
 * trade way ("one eighteen", "two oh eight", "twelve fifty"), digit by digit, decimals, halves and quarters, negatives,
 * and the slang "buck" for a hundred.
 */
export const NUMBER_RULES: Rules = {
  unit: anyOf(Object.keys(UNIT_WORDS)),
  zero: anyOf(ZERO_WORDS),
  digit: alternative(rule('unit'), rule('zero')),
  teen: anyOf(Object.keys(TEEN_WORDS)),
  tens: anyOf(Object.keys(TENS_WORDS)),
  two: pattern('$teen | $tens [$unit]'),
  under: pattern('$unit | $two'),
  // Alternatives below never begin alike: the matcher then follows one way through a number, not many.
  'after-hundred': pattern('hundred [[and] $under]'),
  'after-thousand': pattern('thousand [[and] ($unit [$after-hundred | $two] | $two [$after-hundred])]'),
  'after-unit': pattern(
    '$digit [$after-thousand | $digit [$digit]] | $two [$after-thousand] | $after-hundred | $after-thousand | (tenths | tenth)',
  ),
  'after-two': pattern('$two | $zero $unit | $after-hundred | $after-thousand'),
  'after-buck': pattern('buck [$two | $zero $unit]'),
  whole: pattern(
    `$unit [$after-unit] | $two [$after-two] | $zero [$digit [$digit [$digit]]]
     | a ($after-hundred | $after-thousand | $after-buck) | an $after-hundred | $after-hundred | $after-thousand | $after-buck`,
  ),
  'point-word': anyOf(POINT_WORDS),
  decimals: pattern('$point-word ($digit [$digit [$digit]] | $two)'),
  tenths: pattern('$unit (tenths | tenth)'),
  minus: anyOf(MINUS_WORDS),
  magnitude: pattern(
    `$whole [$decimals | and (a (half | quarter) | one (half | quarter) | three quarters | $tenths)] | $decimals
     | (a | one) (half | quarter | third | sixth | eighth) | half | quarter | third | sixth | eighth | three quarters | ${NUMERAL}`,
  ),
  number: pattern('$minus $magnitude | $magnitude [below [zero]]'),
  pointless: pattern('$tens $unit $unit'),
};

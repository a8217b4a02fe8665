import type { Rules } from '../phrases/expression.ts';
import { TEEN_WORDS, TENS_WORDS } from '../phrases/languages/english/words/number-words.ts';
import { pattern } from '../phrases/pattern.ts';
import type { NumberShape } from '../vocabulary/measurands.ts';

const DIGITS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** "one | two | … up to `most`". */
const upTo = (most: number): string => DIGITS.slice(0, most).join(' | ');

/** Whole numbers below `most` hundred and ninety nine, in the forms people use for meter readings. */
function hundreds(most: number): string {
  const high = most === 1 ? 'one' : `(${upTo(most)})`;
  return `zero | $n-under | ${high} ($n-two | $n-zero $n-unit | $n-digit $n-digit) | (a | ${upTo(most)}) hundred [[and] $n-under]`;
}

/**
 * Numbers as narrow as each measurand allows, for a recogniser that forces every sound into its grammar: fewer ways to
 * be wrong. Every sentence of these is also a sentence of the wide number rules, and no rule of theirs shares a name
 * with them. One network for each shape serves all readings of that shape.
 */
export const TIGHT_NUMBERS: Rules = {
  'n-unit': pattern(`${upTo(9)} | niner`),
  'n-zero': pattern('oh | zero'),
  'n-digit': pattern('$n-unit | $n-zero'),
  'n-two': pattern(`${Object.keys(TEEN_WORDS).join(' | ')} | (${Object.keys(TENS_WORDS).join(' | ')}) [$n-unit]`),
  'n-under': pattern('$n-unit | $n-two'),
  'to-99': pattern(
    '[minus] ((zero | $n-under) [point $n-digit [$n-digit] | and a half] | [oh] point $n-digit [$n-digit])',
  ),
  'to-299': pattern(
    `[minus] (${hundreds(2)}) [point $n-digit [$n-digit] | and a half] | [oh] point $n-digit [$n-digit]`,
  ),
  'up-to-699': pattern(hundreds(7)),
  'to-699': pattern('[minus] $up-to-699'),
  'to-9999': pattern(
    `(${hundreds(9)} | $n-two hundred [[and] $n-under] | $n-two $n-two | (${upTo(9)}) thousand [[and] $n-under | (${upTo(9)}) hundred [[and] $n-under]]) [point $n-digit]`,
  ),
} satisfies Rules & Record<NumberShape, Rules[string]>;

import { COMMON_WORDS } from './languages/english/words/common-words.ts';
import { ZERO_WORDS } from './languages/english/words/number-words.ts';

/**
 * Whether nothing was said but zeros, their units and what joins them: "zero and zero", "okay, zero zero volts". Of any
 * other number nobody knows but that it may be a voltage.
 */
export function saysOnlyZeros(text: string): boolean {
  const said = text.toLowerCase().match(/[a-z']+|\d+(?:\.\d+)?/g) ?? [];
  const isZero = (word: string): boolean =>
    (ZERO_WORDS as readonly string[]).includes(word) || /^0+(?:\.0+)?$/.test(word);
  const isBeside = (word: string): boolean =>
    COMMON_WORDS.fillers.has(word) ||
    COMMON_WORDS.hesitations.has(word) ||
    COMMON_WORDS.joining.has(word) ||
    COMMON_WORDS.units.has(word);
  return said.some(isZero) && said.every((word) => isZero(word) || isBeside(word));
}

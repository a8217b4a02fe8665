import { TEEN_WORDS, TENS_WORDS } from '../words/number-words.ts';
import { readNumber } from './read-number.ts';

/** "thirteen" ↔ "thirty": teens and tens that differ by one sound. "ten" and "twenty" have no twin. */
const OTHER: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(TEEN_WORDS).flatMap(([teen, value]) => {
    const tens = Object.keys(TENS_WORDS).find((word) => TENS_WORDS[word] === (value - 10) * 10);
    return value >= 13 && tens !== undefined ? [[teen, tens] as const, [tens, teen] as const] : [];
  }),
);

/**
 * The value that the same words would have if a teen had been heard for a ty or the other way round ("one fifteen" 115
 * ↔ "one fifty" 150). Undefined where nothing can be confused: "one fifty one", digit by digit, no such word.
 */
export function twinOf(words: readonly string[]): number | undefined {
  for (let at = words.length - 1; at >= 0; at -= 1) {
    const other = OTHER[words[at]!];
    if (other === undefined) continue;
    const swapped = words.with(at, other);
    const twin = readNumber(swapped);
    if (twin !== undefined) return twin.value;
  }
  return undefined;
}

/** The twin of a whole number typed in digits, as its last two digits would be spoken. */
export function twinOfNumeral(value: number): number | undefined {
  if (!Number.isInteger(value) || value < 13) return undefined;
  const low = value % 100;
  if (low >= 13 && low <= 19) return value - low + (low - 10) * 10;
  if (low >= 30 && low % 10 === 0) return value - low + 10 + low / 10;
  return undefined;
}

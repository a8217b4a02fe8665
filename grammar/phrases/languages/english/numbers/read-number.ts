import type { SpokenNumber } from '../../../language.ts';
import { MINUS_WORDS, POINT_WORDS, TEEN_WORDS, TENS_WORDS, UNIT_WORDS, ZERO_WORDS } from '../words/number-words.ts';

const isZero = (word: string | undefined): boolean => (ZERO_WORDS as readonly string[]).includes(word ?? '');
const isPoint = (word: string): boolean => (POINT_WORDS as readonly string[]).includes(word);
const FRACTIONS: Readonly<Record<string, number>> = {
  'a half': 0.5,
  'one half': 0.5,
  half: 0.5,
  quarter: 0.25,
  // The sizes of small motors.
  third: 0.333,
  'a third': 0.333,
  'one third': 0.333,
  sixth: 0.167,
  'a sixth': 0.167,
  'one sixth': 0.167,
  eighth: 0.125,
  'an eighth': 0.125,
  'one eighth': 0.125,
  'a quarter': 0.25,
  'one quarter': 0.25,
  'three quarters': 0.75,
};

/**
 * The value of spoken number words, or undefined where they are not one number. Each sequence has one documented
 * reading: digits are concatenated ("one one eight" 118, "one five" 15); a one- or two-digit group before a two-digit
 * group counts hundreds ("one eighteen" 118, "twelve fifty" 1250, "twelve oh five" 1205); after "point" two-digit words
 * are two decimals ("point fifteen" 0.15); a pair before "point" is read first ("one twenty two point five" 122.5);
 * a digit behind tens and units is a tenth ("twenty seven two" 27.2).
 */
export function readNumber(words: readonly string[]): SpokenNumber | undefined {
  const last = words.at(-1);
  if ((MINUS_WORDS as readonly string[]).includes(words[0] ?? '')) {
    return words.includes('below') ? undefined : negative(readNumber(words.slice(1)));
  }
  if (last === 'below') return negative(readNumber(words.slice(0, -1)));
  if (isZero(last) && words.at(-2) === 'below') return negative(readNumber(words.slice(0, -2)));

  const point = words.findIndex(isPoint);
  if (point >= 0) return readDecimal(words.slice(0, point), words.slice(point + 1));
  return readFraction(words) ?? readWhole(words);
}

function negative(number: SpokenNumber | undefined): SpokenNumber | undefined {
  return number && { ...number, value: number.value === 0 ? 0 : -number.value };
}

function readDecimal(before: readonly string[], after: readonly string[]): SpokenNumber | undefined {
  const whole = before.length === 0 ? { value: 0, form: 'digits' as const } : readWhole(before);
  const decimals = digitsOf(after) ?? twoDigits(after)?.toString();
  if (whole === undefined || decimals === undefined || decimals.length > 3) return undefined;
  return { value: Number(`${whole.value}.${decimals}`), form: whole.form };
}

function readFraction(said: readonly string[]): SpokenNumber | undefined {
  const words = withoutArticle(said);
  const and = words.lastIndexOf('and');
  const fraction = FRACTIONS[words.slice(and + 1).join(' ')] ?? tenthsOf(words.slice(and + 1));
  if (fraction === undefined) return undefined;
  if (and < 0) return { value: fraction, form: 'cardinal' };
  const whole = readWhole(words.slice(0, and));
  // "buck and a quarter": of a hundred.
  const share = whole?.form === 'slang' ? 100 * fraction : fraction;
  return whole && { ...whole, value: whole.value + share };
}

/** "half an …": what is halved follows. */
const withoutArticle = (words: readonly string[]): readonly string[] =>
  words.length === 2 && words[0] === 'half' && (words[1] === 'a' || words[1] === 'an') ? ['half'] : words;

/** "eight tenths" → 0.8. */
function tenthsOf([count, tenths, ...more]: readonly string[]): number | undefined {
  const many = more.length > 0 ? undefined : count === 'a' ? 1 : UNIT_WORDS[count ?? ''];
  return many === undefined || (tenths !== 'tenth' && tenths !== 'tenths') ? undefined : many / 10;
}

/** A whole number 0…99 999 without sign. */
function readWhole(words: readonly string[]): SpokenNumber | undefined {
  if (words.length === 0) return undefined;
  if (words.includes('buck')) return readSlang(words);
  const thousand = words.indexOf('thousand');
  if (thousand >= 0) return readScaled(words.slice(0, thousand), 1000, words.slice(thousand + 1));
  const hundred = words.indexOf('hundred');
  if (hundred >= 0) return readScaled(words.slice(0, hundred), 100, words.slice(hundred + 1));
  const small = underHundred(words);
  if (small !== undefined) return { value: small, form: 'cardinal' };
  const digits = digitsOf(words);
  if (digits !== undefined && digits.length <= 4) {
    return { value: Number(digits), form: words.length === 1 ? 'cardinal' : 'digits' };
  }
  return readPair(words) ?? readPointless(words);
}

function readScaled(before: readonly string[], scale: number, after: readonly string[]): SpokenNumber | undefined {
  const many = before.filter((word) => word !== 'a' && word !== 'an');
  const count = many.length === 0 ? 1 : scale === 100 ? underHundred(many) : readWhole(many)?.value;
  const rest = after[0] === 'and' ? after.slice(1) : after;
  const added = rest.length === 0 ? 0 : scale === 100 ? underHundred(rest) : readWhole(rest)?.value;
  if (count === undefined || added === undefined) return undefined;
  return { value: count * scale + added, form: 'cardinal' };
}

function readSlang(words: readonly string[]): SpokenNumber | undefined {
  const rest = words.slice(words.indexOf('buck') + 1);
  const added = rest.length === 0 ? 0 : (twoDigits(rest) ?? ohDigit(rest));
  return added === undefined ? undefined : { value: 100 + added, form: 'slang' };
}

/** "one eighteen", "twelve fifty", "twelve oh five". */
function readPair(words: readonly string[]): SpokenNumber | undefined {
  for (const cut of [1, 2]) {
    const high = underHundred(words.slice(0, cut));
    const rest = words.slice(cut);
    const low = twoDigits(rest) ?? ohDigit(rest);
    if (high !== undefined && low !== undefined) return { value: high * 100 + low, form: 'pair' };
  }
  return undefined;
}

/** "twenty seven two" → 27.2: no whole number is said so, and on a meter with one decimal people leave the point out. */
function readPointless(words: readonly string[]): SpokenNumber | undefined {
  const tenth = UNIT_WORDS[words.at(-1)!];
  const whole = words.length === 3 ? twoDigits(words.slice(0, 2)) : undefined;
  return whole === undefined || tenth === undefined
    ? undefined
    : { value: Number(`${whole}.${tenth}`), form: 'pointless' };
}

/** "oh five" → 5. */
function ohDigit(words: readonly string[]): number | undefined {
  return words.length === 2 && isZero(words[0]) ? UNIT_WORDS[words[1]!] : undefined;
}

/** 10…99: "eighteen", "forty", "forty five". */
function twoDigits(words: readonly string[]): number | undefined {
  const [first, second, third] = words;
  if (first === undefined || third !== undefined) return undefined;
  if (second === undefined) return TEEN_WORDS[first] ?? TENS_WORDS[first];
  const tens = TENS_WORDS[first];
  const unit = UNIT_WORDS[second];
  return tens === undefined || unit === undefined ? undefined : tens + unit;
}

/** 1…99. */
function underHundred(words: readonly string[]): number | undefined {
  return words.length === 1 ? (UNIT_WORDS[words[0]!] ?? twoDigits(words)) : twoDigits(words);
}

/** "one one eight" → "118", "oh four" → "04"; undefined unless every word is a digit. */
function digitsOf(words: readonly string[]): string | undefined {
  if (words.length === 0) return undefined;
  let digits = '';
  for (const word of words) {
    const digit = isZero(word) ? 0 : UNIT_WORDS[word];
    if (digit === undefined) return undefined;
    digits += digit;
  }
  return digits;
}

import { TEEN_WORDS, TENS_WORDS, UNIT_WORDS } from '../words/number-words.ts';

const wordFor = (table: Readonly<Record<string, number>>, value: number): string =>
  Object.keys(table).find((word) => table[word] === value) ?? String(value);

/**
 * A number the way the trade says it: 118 "one eighteen", 208 "two oh eight", 1205 "twelve oh five", 0.4 "point four",
 * 40.25 "forty point two five". At most three decimals; read back by `readNumber` to the same value.
 * @param value −99 999…99 999
 */
export function sayNumber(value: number): string {
  if (value < 0) return `minus ${sayNumber(-value)}`;
  const [whole = '0', decimals] = plain(value).split('.');
  if (decimals === undefined) return sayWhole(Number(whole));
  const before = whole === '0' ? '' : `${sayWhole(Number(whole))} `;
  return `${before}point ${spell(decimals)}`;
}

/** Digit by digit, as ICAO Annex 10, volume II, 5.2.1.4 has it where there is doubt: 115 "one one five". */
export function sayDigits(value: number): string {
  if (value < 0) return `minus ${sayDigits(-value)}`;
  const [whole = '0', decimals] = plain(value).split('.');
  return decimals === undefined ? spell(whole, 'zero') : `${spell(whole, 'zero')} point ${spell(decimals, 'zero')}`;
}

function plain(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function spell(digits: string, zero = 'oh'): string {
  return [...digits].map((digit) => (digit === '0' ? zero : wordFor(UNIT_WORDS, Number(digit)))).join(' ');
}

function sayWhole(value: number): string {
  if (value === 0) return 'zero';
  if (value < 100) return sayUnderHundred(value);
  const high = Math.floor(value / 100);
  const low = value % 100;
  if (high >= 100 || high % 10 === 0) return sayThousands(value);
  if (low === 0) return `${sayUnderHundred(high)} hundred`;
  return `${sayUnderHundred(high)} ${low < 10 ? `oh ${sayUnderHundred(low)}` : sayUnderHundred(low)}`;
}

function sayThousands(value: number): string {
  const thousands = `${sayWhole(Math.floor(value / 1000))} thousand`;
  const rest = value % 1000;
  return rest === 0 ? thousands : `${thousands} ${sayWhole(rest)}`;
}

function sayUnderHundred(value: number): string {
  if (value < 10) return wordFor(UNIT_WORDS, value);
  if (value < 20) return wordFor(TEEN_WORDS, value);
  const unit = value % 10;
  const tens = wordFor(TENS_WORDS, value - unit);
  return unit === 0 ? tens : `${tens} ${wordFor(UNIT_WORDS, unit)}`;
}

import { TEEN_WORDS, TENS_WORDS, UNIT_WORDS } from '../words/number-words.ts';

const nameOf = (table: Readonly<Record<string, number>>, value: number): string =>
  Object.keys(table).find((word) => table[word] === value)!;
const unit = (digit: number): string => nameOf(UNIT_WORDS, digit);

/** "eighteen", "forty", "forty five"; undefined outside 10…99. */
function twoDigits(value: number): string | undefined {
  if (value < 10 || value > 99) return undefined;
  if (value < 20) return nameOf(TEEN_WORDS, value);
  const tens = nameOf(TENS_WORDS, value - (value % 10));
  return value % 10 === 0 ? tens : `${tens} ${unit(value % 10)}`;
}

const under = (value: number): string => (value < 10 ? unit(value) : twoDigits(value)!);

/** The digits of a whole number one by one, once with "zero" and once with "oh". */
function digitForms(value: number): string[] {
  const digits = [...String(value)].map(Number);
  return ['zero', 'oh'].map((zero) => digits.map((digit) => (digit === 0 ? zero : unit(digit))).join(' '));
}

/** "…", "and …" behind hundreds and thousands; nothing for 0. */
const added = (value: number): string[] => (value === 0 ? [''] : [` ${under(value)}`, ` and ${under(value)}`]);

/** 100…9999 counted in hundreds the trade way: "one eighteen", "twelve oh five", "eleven hundred and fifty". */
function hundredForms(value: number): string[] {
  const high = Math.floor(value / 100);
  const low = value % 100;
  if (high > 9 && high % 10 === 0) return pairForms(high, low);
  const counts = high === 1 ? ['one', 'a'] : [under(high)];
  const cardinal = counts.flatMap((count) => added(low).map((rest) => `${count} hundred${rest}`));
  return [...pairForms(high, low), ...cardinal, ...(high === 1 ? buckForms(low) : [])];
}

function pairForms(high: number, low: number): string[] {
  if (low >= 10) return [`${under(high)} ${twoDigits(low)}`];
  return low > 0 ? [`${under(high)} oh ${unit(low)}`, `${under(high)} zero ${unit(low)}`] : [];
}

function buckForms(low: number): string[] {
  if (low === 0) return ['a buck'];
  return [low >= 10 ? `buck ${twoDigits(low)}` : `buck oh ${unit(low)}`];
}

function thousandForms(value: number): string[] {
  const high = Math.floor(value / 1000);
  const low = value % 1000;
  const counts = high === 1 ? ['one', 'a'] : [unit(high)];
  const rests =
    low < 100
      ? added(low)
      : [...added(low % 100).map((rest) => ` ${unit(Math.floor(low / 100))} hundred${rest}`), ...longPair(low)];
  return counts.flatMap((count) => rests.map((rest) => `${count} thousand${rest}`));
}

/** "two thousand | four fifty". */
const longPair = (low: number): string[] =>
  low % 100 >= 10 ? [` ${unit(Math.floor(low / 100))} ${twoDigits(low % 100)}`] : [];

/**
 * Every way a whole number 0…9999 is said, the trade's own way first. Words in small letters, apart by single spaces;
 * no form is shared by two numbers.
 */
export function spokenWholes(value: number): string[] {
  if (value === 0) return ['zero', 'oh'];
  if (value < 10) return [unit(value)];
  const forms = new Set<string>();
  if (value < 100) forms.add(twoDigits(value)!);
  else for (const form of hundredForms(value)) forms.add(form);
  if (value >= 1000) for (const form of thousandForms(value)) forms.add(form);
  for (const form of digitForms(value)) forms.add(form);
  return [...forms];
}

/** Every way a number 0…9999 with at most one decimal is said, the trade's own way first. */
export function spokenForms(value: number): string[] {
  const tenths = Math.round(value * 10);
  const whole = Math.floor(tenths / 10);
  const tenth = tenths % 10;
  if (tenth === 0) return spokenWholes(whole);
  const digit = unit(tenth);
  const points = whole === 0 ? [`point ${digit}`] : [];
  const forms = [...points, ...spokenWholes(whole).map((form) => `${form} point ${digit}`)];
  if (tenth === 5 && whole > 0) {
    // "a buck and a half" is 150.
    const counted = spokenWholes(whole).filter((form) => !form.includes('buck'));
    forms.push(...counted.map((form) => `${form} and a half`));
  }
  return forms;
}

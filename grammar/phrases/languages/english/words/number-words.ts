/**
 * Words of which spoken numbers are made. "niner", "tree", "fife" and the like: ICAO Annex 10, volume II, 5.2.1.4.3
 * (pronunciation of numbers), from memory.
 */
export const ZERO_WORDS = ['zero', 'oh', 'o', 'nought', 'aught'] as const;

export const UNIT_WORDS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  niner: 9,
  tree: 3,
  fife: 5,
  fower: 4,
};

export const TEEN_WORDS: Readonly<Record<string, number>> = {
  ten: 10,
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
};

export const TENS_WORDS: Readonly<Record<string, number>> = {
  twenty: 20,
  thirty: 30,
  forty: 40,
  fifty: 50,
  sixty: 60,
  seventy: 70,
  eighty: 80,
  ninety: 90,
};

export const POINT_WORDS = ['point', 'decimal'] as const;
export const MINUS_WORDS = ['minus', 'negative'] as const;

/** Every word that may stand in a number and changes it. */
export const NUMBER_WORDS: readonly string[] = [
  ...ZERO_WORDS,
  ...Object.keys(UNIT_WORDS),
  ...Object.keys(TEEN_WORDS),
  ...Object.keys(TENS_WORDS),
  ...POINT_WORDS,
  ...MINUS_WORDS,
  'hundred',
  'thousand',
  'buck',
  'half',
  'quarter',
  'quarters',
  'third',
  'sixth',
  'eighth',
  'below',
];

const STANDS_FOR: ReadonlyMap<string, string> = new Map([
  ...ZERO_WORDS.map((word) => [word, '0'] as const),
  ...[UNIT_WORDS, TEEN_WORDS, TENS_WORDS].flatMap((words) =>
    Object.entries(words).map(([word, value]) => [word, String(value)] as const),
  ),
  ['hundred', '00'],
  ['thousand', '000'],
  ...POINT_WORDS.map((word) => [word, '.'] as const),
  ...MINUS_WORDS.map((word) => [word, '-'] as const),
]);

/** The part of a number that a word stands for; undefined where it is none. Words for one part are the same there. */
export const numberWordStandsFor = (word: string): string | undefined => STANDS_FOR.get(word);

/** Words that make another number of one they follow: for trying whether it can go on. */
export const NUMBER_TAILS = { digit: ['five', 'twenty'], fraction: ['point five'] } as const;

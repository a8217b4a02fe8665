import type { Language } from './language.ts';
import type { Network } from './network.ts';
import type { HeardWord } from './tokenise.ts';
import { NUMERAL } from './words.ts';

/** How one heard word was taken. */
export type Taken =
  | { readonly how: 'word' | 'homophone' | 'near'; readonly heard: HeardWord; readonly word: string }
  | { readonly how: 'filler' | 'hesitation' | 'skipped'; readonly heard: HeardWord };

/** A word of the grammar that a heard word may have been, and what the change costs. */
export interface Near {
  readonly word: string;
  readonly cost: number;
}

export type PassedOver = 'filler' | 'hesitation' | 'skipped';
/** What it costs to take a word otherwise than as it was heard. */
export const COST = { homophone: 0.4, filler: 0.4, hesitation: 0.4, skipped: 3 } as const;

const isNumber = (word: HeardWord, { numbers }: Language): boolean =>
  word.numeral !== undefined || numbers.all.has(word.text);

/** "compressor's" → compressor, 's: short for "is", or nothing. */
export function apart(word: HeardWord, network: Network): HeardWord[] {
  const { ending } = network.language.words;
  if (ending === undefined || !word.text.endsWith(ending) || network.words.has(word.text)) return [word];
  const stem = word.text.slice(0, -ending.length);
  return network.words.has(stem) ? [{ text: stem }, { text: ending }] : [word];
}

/**
 * Whether a word may be passed over, and as what. What joins two numbers is not: "thirty five and five" is no 35.5.
 *
 * @param beside the words before and behind it
 */
export function passOver(
  word: HeardWord,
  language: Language,
  forgiving: boolean,
  beside: readonly (HeardWord | undefined)[],
): PassedOver | undefined {
  const { fillers, hesitations, turning, ending } = language.words;
  const joins = word.text === language.numbers.and;
  if (joins && beside.every((one) => one !== undefined && isNumber(one, language))) return undefined;
  if (fillers.has(word.text) || word.text === ending) return 'filler';
  if (hesitations.has(word.text)) return 'hesitation';
  return forgiving && !isNumber(word, language) && !turning.has(word.text) ? 'skipped' : undefined;
}

export interface Choice extends Near {
  readonly how: 'word' | 'homophone' | 'near';
}

/**
 * Everything one heard word may be taken for that the grammar has.
 *
 * @param next the word behind it: "to ground" is no two
 */
export function choicesFor(
  word: HeardWord,
  next: HeardWord | undefined,
  network: Network,
  near: ((heard: string) => readonly Near[]) | undefined,
): Choice[] {
  const { numbers, words } = network.language;
  if (word.numeral !== undefined) {
    return [NUMERAL, ...numbers.wordsFor(word.numeral)].map((text) => ({ word: text, cost: 0, how: 'word' }));
  }
  const choices: Choice[] = [{ word: word.text, cost: 0, how: 'word' }];
  const links = words.linking.has(word.text) && next !== undefined && words.linkedTo?.has(next.text) === true;
  for (const other of links ? [] : (words.homophones[word.text] ?? [])) {
    choices.push({ word: other, cost: COST.homophone, how: 'homophone' });
  }
  if (!network.words.has(word.text)) {
    const one = words.otherNumber?.(word.text);
    if (one !== undefined && one.length >= 4) choices.push({ word: one, cost: COST.homophone, how: 'homophone' });
  }
  if (near !== undefined) {
    for (const other of near(word.text)) choices.push({ ...other, how: 'near' });
  }
  return choices.filter((choice) => network.words.has(choice.word));
}

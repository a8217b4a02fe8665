import { FILLERS, HESITATIONS, NEGATIONS, UNREAL_WORDS } from '../vocabulary/fillers.ts';
import { HOMOPHONES } from '../vocabulary/homophones.ts';
import { NUMBER_WORDS, TEEN_WORDS, UNIT_WORDS } from '../vocabulary/number-words.ts';
import { UNIT_NAMES } from '../vocabulary/units.ts';
import type { Network } from './network.ts';
import type { HeardWord } from './tokenise.ts';
import { NUMERAL, POSSESSIVE } from './words.ts';

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

const fillers = new Set(FILLERS);
const hesitations = new Set(HESITATIONS);
/** Words without which a sentence says another thing; a unit is never dropped either. */
const turning = new Set([...NEGATIONS, ...UNREAL_WORDS, ...UNIT_NAMES]);
const numberWords = new Map<number, string[]>();
for (const [word, value] of [...Object.entries(UNIT_WORDS), ...Object.entries(TEEN_WORDS)]) {
  numberWords.set(value, [...(numberWords.get(value) ?? []), word]);
}
const numberNames = new Set(NUMBER_WORDS);
const isNumber = (word: HeardWord): boolean => word.numeral !== undefined || numberNames.has(word.text);

/** "compressor's" → compressor, 's: short for "is", or nothing. */
export function apart(word: HeardWord, network: Network): HeardWord[] {
  const stem = /^(.+)'s$/.exec(word.text)?.[1];
  if (stem === undefined || network.words.has(word.text) || !network.words.has(stem)) return [word];
  return [{ text: stem }, { text: POSSESSIVE }];
}

/** Whether a word may be passed over, and as what. */
export function passOver(word: HeardWord, forgiving: boolean): PassedOver | undefined {
  if (fillers.has(word.text) || word.text === POSSESSIVE) return 'filler';
  if (hesitations.has(word.text)) return 'hesitation';
  return forgiving && !isNumber(word) && !turning.has(word.text) ? 'skipped' : undefined;
}

export interface Choice extends Near {
  readonly how: 'word' | 'homophone' | 'near';
}

/** Everything one heard word may be taken for that the grammar has. */
export function choicesFor(
  word: HeardWord,
  network: Network,
  near: ((heard: string) => readonly Near[]) | undefined,
): Choice[] {
  if (word.numeral !== undefined) {
    const spoken = numberWords.get(word.numeral) ?? (word.numeral === 0 ? ['zero'] : []);
    return [NUMERAL, ...spoken].map((text) => ({ word: text, cost: 0, how: 'word' }));
  }
  const choices: Choice[] = [{ word: word.text, cost: 0, how: 'word' }];
  for (const other of HOMOPHONES[word.text] ?? []) {
    choices.push({ word: other, cost: COST.homophone, how: 'homophone' });
  }
  if (!network.words.has(word.text)) {
    const one = word.text.endsWith('s') ? word.text.slice(0, -1) : `${word.text}s`;
    if (one.length >= 4) choices.push({ word: one, cost: COST.homophone, how: 'homophone' });
  }
  if (near !== undefined) {
    for (const other of near(word.text)) choices.push({ ...other, how: 'near' });
  }
  return choices.filter((choice) => network.words.has(choice.word));
}

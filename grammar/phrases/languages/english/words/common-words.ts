import { UNIT_NAMES } from '../../../../vocabulary/units.ts';
import type { CommonWords } from '../../../language.ts';
import { FILLERS, HESITATIONS, NEGATIONS, UNREAL_WORDS } from './fillers.ts';
import { HOMOPHONES, LINKING_WORDS } from './homophones.ts';
import { APPROXIMATELY } from './reading-words.ts';

/** English words by what they do to a sentence. */
export const COMMON_WORDS: CommonWords = {
  fillers: new Set(FILLERS),
  hesitations: new Set(HESITATIONS),
  turning: new Set([...NEGATIONS, ...UNREAL_WORDS, ...UNIT_NAMES]),
  units: UNIT_NAMES,
  ratings: new Set(['amp', 'volt', 'ton']),
  ohms: /ohms?$/,
  homophones: HOMOPHONES,
  linking: new Set(LINKING_WORDS),
  linkedTo: new Set(
    'ground shell common neutral case chassis earth start run herm fan capacitor leg line load terminal t l c capacitance continuity ohms microfarads'.split(
      ' ',
    ),
  ),
  otherNumber: (word) => (word.endsWith('s') ? word.slice(0, -1) : `${word}s`),
  // For "is", or for nothing.
  ending: "'s",
  swallowed: new Map([
    ['to', 1.5],
    ['is', 1],
    ['at', 1],
    ['of', 0.7],
    ['on', 1],
  ]),
  joining: new Set(['and', 'then']),
  parting: new Set(['now', 'then', 'next', 'okay', 'ok', 'alright']),
  remarks: new Set(['and']),
  // A "right?" asks.
  calling: new Set(['and', 'then', 'the', 'a', 'an', 'right']),
  articles: new Set(['the', 'my']),
  placeless: new Set(['nothing', 'zilch', 'nada', 'open', 'infinite', 'zero']),
  about: new Set(APPROXIMATELY.match(/[a-z]+/g)),
  // "twenty degrees | across the coil".
  belonging: new Set(['across', 'on', 'at', 'in', 'of', 'from', 'between', ...UNIT_NAMES]),
  headings: new Set(['off']),
};

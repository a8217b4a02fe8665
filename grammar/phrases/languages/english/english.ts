import type { Language } from '../../language.ts';
import { NEAR_WORDS } from './near-words/near-lines.ts';
import { ENGLISH_NUMBERS } from './numbers/english-numbers.ts';
import { readPlateMarks } from './plate-marks.ts';
import { RULES } from './rules/utterance-rules.ts';
import { COMMON_WORDS } from './words/common-words.ts';
import { SENTENCES } from './words/sentences.ts';
import { WRITING } from './words/writing.ts';

/** English as the trade speaks it in the United States. */
export const ENGLISH: Language = {
  id: 'en-US',
  rules: RULES,
  numbers: ENGLISH_NUMBERS,
  words: COMMON_WORDS,
  writing: WRITING,
  near: NEAR_WORDS,
  sentences: SENTENCES,
  readPlateMarks,
};

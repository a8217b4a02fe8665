import type { Language } from '../../language.ts';
import { readPlateMarks } from '../../plate-marks.ts';
import { RULES } from '../../rules/utterance-rules.ts';
import { COMMON_WORDS } from './common-words.ts';
import { ENGLISH_NUMBERS } from './english-numbers.ts';
import { NEAR_WORDS } from './near-lines.ts';
import { SENTENCES } from './sentences.ts';
import { WRITING } from './writing.ts';

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

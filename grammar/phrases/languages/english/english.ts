import type { Language } from '../../language.ts';
import { NEAR_WORDS } from './near-words/near-lines.ts';
import { readPlateMarks } from './plate-marks.ts';
import { RULES } from './rules/utterance-rules.ts';
import { SENTENCES } from './words/sentences.ts';
import { WRITTEN_ENGLISH } from './written-english.ts';

/** English as the trade speaks it in the United States. */
export const ENGLISH: Language = {
  ...WRITTEN_ENGLISH,
  id: 'en-US',
  rules: RULES,
  near: NEAR_WORDS,
  sentences: SENTENCES,
  readPlateMarks,
};

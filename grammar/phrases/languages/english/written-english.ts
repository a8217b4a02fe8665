import type { WrittenLanguage } from '../../tokenise.ts';
import { ENGLISH_NUMBERS } from './numbers/english-numbers.ts';
import { COMMON_WORDS } from './words/common-words.ts';
import { WRITING } from './words/writing.ts';

/** English as far as its words are told apart, for whoever looks at words without taking a sentence apart. */
export const WRITTEN_ENGLISH: WrittenLanguage = { writing: WRITING, words: COMMON_WORDS, numbers: ENGLISH_NUMBERS };

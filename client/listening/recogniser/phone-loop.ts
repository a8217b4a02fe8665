import type { Automaton } from './automaton.ts';
import type { Pronunciations } from './grammar-decoder.ts';

/** The sounds of American English as the acoustic models have them (ARPAbet as in the CMU Pronouncing Dictionary). */
const PHONES =
  'AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH'.split(' ');

const wordOf = (phone: string): string => `_${phone.toLowerCase()}`;

/** The sound that such a word stands for. */
export const phoneOf = (word: string): string => word.replace('_', '').toUpperCase();

/** A word for each sound. */
export const PHONE_WORDS: Pronunciations = Object.fromEntries(PHONES.map((phone) => [wordOf(phone), [phone]]));

const ANY: ReadonlyMap<string, number> = new Map(PHONES.map((phone) => [wordOf(phone), 1]));

/** Any sounds in any order: what the score of a grammar is held against, to tell its sentences from other speech. */
export const PHONE_LOOP: Automaton = { arcs: [ANY, ANY], final: [false, true] };

import { cautionById } from '../../client/words/talk/caution-words.ts';
import type { ObeyedVisit } from './obeying-technician.ts';

/** Words a second of the program's voice, measured; a technician's own speech is about as fast (common practice). */
export const WORDS_A_SECOND = 2.3;

/** What a visit may ask of ears and mouth: in the median of twelve faults, and in any of them. Words and seconds are those spoken to the technician. */
export const TALK_LIMITS = {
  median: { utterances: 42, words: 400, seconds: 175 },
  most: { utterances: 60, words: 650, seconds: 290 },
  /** Words of one prompt; once the standing rules were told. */
  longest: 25,
  longestAfter: 12,
} as const;

export interface Talk {
  readonly utterances: number;
  readonly prompts: number;
  readonly words: number;
  readonly seconds: number;
  /** Words of the longest prompt. */
  readonly longest: number;
  /** The longest prompt once the standing rules were told. */
  readonly longestAfter: number;
}

const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;

/** What one obeyed visit asked of ears and mouth. */
export function talkOf({ lines }: ObeyedVisit): Talk {
  const said = lines.filter(({ who }) => who !== 'technician');
  const told = lines.findLastIndex(({ text }) => text.includes(cautionById('standing-hazards').words));
  const after = lines.slice(told + 1).filter(({ who }) => who !== 'technician');
  const longest = (prompts: typeof said) => Math.max(0, ...prompts.map(({ text }) => wordsIn(text)));
  const words = said.reduce((sum, { text }) => sum + wordsIn(text), 0);
  return {
    utterances: lines.length - said.length,
    prompts: said.length,
    words,
    seconds: words / WORDS_A_SECOND,
    longest: longest(said),
    longestAfter: longest(after),
  };
}

import type { InputTime } from './inputs.ts';
import type { KeptSound } from './kept-sound.ts';

/** Beside the words of a dictation. */
export interface Dictation {
  readonly sound?: KeptSound;
  /** The words are what a recogniser of orders made of free speech: nobody is to rely on them. */
  readonly guessed?: true;
}

/** A dictation as it stands: its words are those that were written over it, where they were. */
export interface DictatedLine extends Dictation {
  readonly seq: number;
  readonly time: InputTime;
  readonly text: string;
  /** The words that were written over. */
  readonly heard?: string;
}

/** A dictation with the words that were written over it: they are no guess any more. */
export function writtenOver<L extends DictatedLine>(line: L, text: string): L {
  const { guessed: _guessed, ...kept } = line;
  return { ...kept, text, heard: line.heard ?? line.text } as L;
}

/** What an event says of a dictation, without its words. */
export function dictationOf({ sound, guessed }: Dictation): Dictation {
  return { ...(sound === undefined ? {} : { sound }), ...(guessed === undefined ? {} : { guessed }) };
}

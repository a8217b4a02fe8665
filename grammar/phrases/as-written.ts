import type { Meaning } from './meaning.ts';
import { tokenise } from './tokenise.ts';

/** Dictated words as they were written: with their capitals and marks, where they are the end of what was written. */
export function asWritten(meaning: Meaning, written: string): Meaning {
  if (meaning.kind !== 'note' && meaning.kind !== 'dictated') return meaning;
  const text = endOf(written, meaning.text);
  return text === undefined ? meaning : { ...meaning, text };
}

/** The end of a text that comes to these words. */
function endOf(written: string, words: string): string | undefined {
  if (words === '') return undefined;
  const wanted = wordsOf(words);
  for (const { index } of written.matchAll(/(?<=^|\s)\S/g)) {
    const end = written.slice(index).trim();
    if (wordsOf(end) === wanted) return end;
  }
  return undefined;
}

const wordsOf = (text: string): string =>
  tokenise(text)
    .map((word) => word.text)
    .join(' ')
    .replaceAll(" 's", "'s");

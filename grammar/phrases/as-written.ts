import type { Language } from './language.ts';
import type { Meaning } from './meaning.ts';
import { tokenise } from './tokenise.ts';

/** Dictated words as they were written: with their capitals and marks, where they are the end of what was written. */
export function asWritten(meaning: Meaning, written: string, language: Language): Meaning {
  if (meaning.kind !== 'note' && meaning.kind !== 'dictated') return meaning;
  const text = endOf(written, meaning.text, language);
  return text === undefined ? meaning : { ...meaning, text };
}

/** The end of a text that comes to these words. */
function endOf(written: string, words: string, language: Language): string | undefined {
  if (words === '') return undefined;
  const wanted = wordsOf(words, language);
  for (const { index } of written.matchAll(/(?<=^|\s)\S/g)) {
    const end = written.slice(index).trim();
    if (wordsOf(end, language) === wanted) return end;
  }
  return undefined;
}

const wordsOf = (text: string, language: Language): string =>
  tokenise(text, language)
    .map((word) => word.text)
    .join(' ')
    .replaceAll(" 's", "'s");

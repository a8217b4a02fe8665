/** Sentences of a language with the words of each, and in how many each word stands. */
export interface Sentences {
  readonly all: readonly { readonly sentence: string; readonly words: ReadonlySet<string> }[];
  readonly share: ReadonlyMap<string, number>;
}

/** @param sentences one of each kind that can be said, with "…" where a value belongs */
export function sentencesOf(sentences: readonly string[]): Sentences {
  const all = sentences.map((sentence) => ({
    sentence,
    words: new Set(sentence.toLowerCase().match(/[\p{Ll}']{2,}/gu) ?? []),
  }));
  const share = new Map<string, number>();
  for (const { words } of all) for (const word of words) share.set(word, (share.get(word) ?? 0) + 1);
  return { all, share };
}

import type { Near } from './word-choices.ts';

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

/**
 * Up to three sentences that have most in common with what was heard, rare words counting more; empty where nothing
 * does. For "did you mean …?".
 */
export function suggest(
  heard: readonly string[],
  near: (word: string) => readonly Near[],
  { all, share }: Sentences,
): string[] {
  const said = new Set(heard.flatMap((word) => [word, ...near(word).map((other) => other.word)]));
  const scored = all.map(({ sentence, words }) => {
    let score = 0;
    for (const word of words) if (said.has(word)) score += 1 / share.get(word)!;
    return { sentence, score: score / Math.sqrt(words.size) };
  });
  return scored
    .filter(({ score }) => score > 0.02)
    .sort((a, b) => b.score - a.score)
    .slice(0, 3)
    .map(({ sentence }) => sentence);
}

import type { Sentences } from './sentences.ts';
import type { Near } from './word-choices.ts';

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

import type { Near } from './word-choices.ts';

/**
 * Gives the function that finds up to three sentences that have most in common with what was heard, rare words counting
 * more; empty where nothing does. For "did you mean …?".
 *
 * @param sentences one of each kind that can be said
 */
export function makeSuggest(
  sentences: readonly string[],
  near: (word: string) => readonly Near[],
): (heard: readonly string[]) => string[] {
  const wordsOf = sentences.map((sentence) => new Set(sentence.toLowerCase().match(/[\p{Ll}']{2,}/gu) ?? []));
  const share = new Map<string, number>();
  for (const words of wordsOf) for (const word of words) share.set(word, (share.get(word) ?? 0) + 1);
  return (heard) => {
    const said = new Set(heard.flatMap((word) => [word, ...near(word).map((other) => other.word)]));
    const scored = sentences.map((sentence, index) => {
      let score = 0;
      for (const word of wordsOf[index]!) if (said.has(word)) score += 1 / share.get(word)!;
      return { sentence, score: score / Math.sqrt(wordsOf[index]!.size) };
    });
    return scored
      .filter(({ score }) => score > 0.02)
      .sort((a, b) => b.score - a.score)
      .slice(0, 3)
      .map(({ sentence }) => sentence);
  };
}

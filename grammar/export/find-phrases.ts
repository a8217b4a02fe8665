/** What a phrase is of; `now` is what is asked. */
export const PHRASE_GROUPS = ['now', 'orders', 'power', 'readings', 'seen', 'plate', 'work', 'job', 'written'] as const;
export type PhraseGroup = (typeof PHRASE_GROUPS)[number];

export interface PhraseNow {
  readonly group: PhraseGroup;
  /** In the grammar's own words, with "…" where a number or free words belong: no value is suggested. */
  readonly phrase: string;
  /** What the "…" stands for. */
  readonly slot?: 'number' | 'words';
}

/** Those that hold each of the words that are looked for, or their beginnings. */
export function findPhrases(phrases: readonly PhraseNow[], text: string): readonly PhraseNow[] {
  const wanted = text.toLowerCase().split(/\s+/).filter(Boolean);
  return phrases.filter(({ phrase }) => {
    const words = phrase.toLowerCase().split(' ');
    return wanted.every((one) => words.some((word) => word.startsWith(one)));
  });
}

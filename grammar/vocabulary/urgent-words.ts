/**
 * The words that are heeded while the mouth speaks: each alone, from a recogniser that listens for nothing else. No
 * prompt may hold one of them, or the mouth would cut itself short.
 */
export const URGENT_WORDS = ['stop', 'wait', 'no', 'hot'] as const;

/** Heeded as well, but for what the mouth says itself just then. Each alone, as the words. */
export const URGENT_PHRASES = ['hands off', 'i got bit', 'i got shocked'] as const;

/** All that is heeded while this is spoken. */
export function urgentWhile(spoken: string): readonly string[] {
  const own = spoken.toLowerCase();
  return [...URGENT_WORDS, ...URGENT_PHRASES.filter((phrase) => !own.includes(phrase))];
}

/** Whether a whole utterance is one of them. */
export function isUrgentWord(text: string): boolean {
  return (URGENT_WORDS as readonly string[]).includes(text);
}

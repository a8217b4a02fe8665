/**
 * The words that are heeded while the mouth speaks: each alone, from a recogniser that listens for nothing else. No
 * prompt may hold one of them, or the mouth would cut itself short.
 */
export const URGENT_WORDS = ['stop', 'wait', 'no', 'hot'] as const;

/** Whether a whole utterance is one of them. */
export function isUrgentWord(text: string): boolean {
  return (URGENT_WORDS as readonly string[]).includes(text);
}

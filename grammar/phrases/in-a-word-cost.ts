/** What a short answer costs among all that may be said: unasked, it is the last thing that words are taken for. */
export const IN_A_WORD_COST = 3;

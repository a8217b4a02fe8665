import nearWords from './near-words.json' with { type: 'json' };

/** For each word of the grammar, the words that sound near it with their distance in hundredths; one line a word. */
export const NEAR_WORDS = Object.entries(nearWords).reduce((text, [word, near]) => `${text}${word} ${near}\n`, '\n');

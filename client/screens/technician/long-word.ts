/** A word of more letters than this nearly fills a key that is a third of a small phone wide. */
const MOST_LETTERS = 8;

/** The class of a key whose label has a word that is set smaller, so that it is not cut. */
export function longWord(label: string): '' | 'long-word' {
  return label.split(/\s+/).some((word) => word.length > MOST_LETTERS) ? 'long-word' : '';
}

/** Of what was said in the record of work, in letters; our choice. */
const LONGEST_QUOTE = 120;

/** Words as they were heard, in quotation marks, no longer than a line of the record holds. */
export function quoteWords(heard: string): string {
  return `"${heard.slice(0, LONGEST_QUOTE)}"`;
}

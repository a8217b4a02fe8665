/** Gathers sources as footnotes: each stands once, under the number that marks it. */
export class Footnotes {
  readonly #sources: string[] = [];

  /** " [2]", to stand behind what the source is for. */
  mark(source: string): string {
    const words = printedSource(source);
    const found = this.#sources.indexOf(words);
    return ` [${found >= 0 ? found + 1 : this.#sources.push(words)}]`;
  }

  lines(): readonly string[] {
    return this.#sources.map((source, at) => `[${at + 1}] ${source}`);
  }
}

const FROM_MEMORY = /\(?,? ?from memory\)?/;
const PRACTICE = 'common practice';

/**
 * A source as it is put before a customer. Where a document was named from memory and not looked up, it is not named:
 * what is known of it is common practice.
 */
export function printedSource(source: string): string {
  const parts = source.split(';').map((part) => part.trim());
  const kept = parts.map((part) => (FROM_MEMORY.test(part) ? asPractice(part) : part));
  const different = [...new Set(kept)];
  const isSaid = different.some((part) => part !== PRACTICE && part.includes(PRACTICE));
  return different.filter((part) => part !== PRACTICE || !isSaid).join('; ');
}

/** "evacuated to 500 microns or below: NAME, from memory" says what is done before it says where that stands. */
function asPractice(part: string): string {
  const colon = part.indexOf(': ');
  return colon < 0 ? PRACTICE : `${part.slice(0, colon)}: ${PRACTICE}`;
}

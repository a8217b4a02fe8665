import { WRITTEN_ENGLISH } from '../../grammar/phrases/languages/english/written-english.ts';

/** A small whole number that the words say, and nothing else. */
export function numberOf(words: readonly string[]): number | undefined {
  if (words.length === 1 && /^[0-9]{1,2}$/.test(words[0]!)) return Number(words[0]);
  const value = WRITTEN_ENGLISH.numbers.read([...words])?.value;
  return value !== undefined && Number.isInteger(value) && value > 0 && value < 20 ? value : undefined;
}

/** The same words, whatever stands between them and in front. */
export function isAmong(name: readonly string[], said: readonly string[]): boolean {
  return name.join(' ') === said.join(' ');
}

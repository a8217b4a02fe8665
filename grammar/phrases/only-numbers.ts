import { ENGLISH } from './languages/english/english.ts';

/** Whether nothing was said but numbers, their units and what joins them: "zero and zero", "okay, zero zero volts". */
export function saysOnlyNumbers(text: string): boolean {
  const { numbers, words } = ENGLISH;
  const said = text.toLowerCase().match(/[a-z']+|\d+(?:\.\d+)?/g) ?? [];
  const isNumber = (word: string): boolean => numbers.all.has(word) || /^\d/.test(word);
  const isBeside = (word: string): boolean =>
    words.fillers.has(word) || words.hesitations.has(word) || words.joining.has(word) || words.units.has(word);
  return said.some(isNumber) && said.every((word) => isNumber(word) || isBeside(word));
}

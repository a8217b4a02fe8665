import type { Language, Writing } from './language.ts';
import { match } from './match.ts';
import type { Expectation, UnclearReason, Understanding } from './meaning.ts';
import type { Network } from './network.ts';
import type { HeardWord } from './tokenise.ts';
import { weigh } from './weigh.ts';

/** A language and its network: what is needed to try other words. */
interface Reader {
  readonly language: Language;
  readonly network: Network;
}

const isNumber = (word: HeardWord | undefined, { all }: Language['numbers']): boolean =>
  word !== undefined && (word.numeral !== undefined || all.has(word.text));

/** A letter behind a number was passed over to make it fit: it may have been its unit, and a unit is never dropped. */
export function passesOverUnit(
  heard: readonly HeardWord[],
  { repaired }: Understanding,
  { numbers }: Language,
): boolean {
  const passed = (repaired ?? []).filter(({ taken }) => taken === '').map((one) => one.heard);
  return heard.some(({ text }, at) => text.length === 1 && passed.includes(text) && isNumber(heard[at - 1], numbers));
}

/** Why nothing can be made of it: another language, a unit that does not belong to the place, or no sentence at all. */
export function whyNot(
  text: string,
  heard: readonly HeardWord[],
  ready: Reader,
  expectation: Expectation | undefined,
): UnclearReason {
  if (foreign(text, ready.language.writing)) return 'not-english';
  return isReadWithoutUnit(heard, ready, expectation) ? 'other-unit' : 'outside-grammar';
}

/** Whether it is a reading but for the unit behind its number; a number that something else is counted by is none. */
export function isReadWithoutUnit(
  heard: readonly HeardWord[],
  { language, network }: Reader,
  expectation: Expectation | undefined,
): boolean {
  const { numbers, words } = language;
  const isUnit = heard.map(() => false);
  for (const [at, { text }] of heard.entries())
    isUnit[at] =
      words.units.has(text) &&
      words.ratings?.has(text) !== true &&
      // A language may say its unit before the number, or behind it.
      (isNumber(heard[at - 1], numbers) || isNumber(heard[at + 1], numbers) || isUnit[at - 1] === true);
  if (!isUnit.includes(true)) return false;
  const without = heard.filter((_, at) => isUnit[at] !== true);
  const [best] = weigh(match(network, without), expectation, language);
  return (
    best?.draft.meaning.kind === 'reading' ||
    (best?.draft.meaning.kind === 'command' && best.draft.meaning.correction !== undefined)
  );
}

/** Mostly letters that the language does not write. */
function foreign(text: string, { letter: own }: Writing): boolean {
  const letters = text.match(/\p{L}/gu) ?? [];
  return letters.filter((letter) => !own.test(letter)).length * 4 > letters.length;
}

import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import type { UnitCode } from '../../vocabulary/quantities.ts';
import { bareUnitOf, type UnitChoice } from '../../vocabulary/unit-choice.ts';
import type { NumberWords } from '../language.ts';
import { changesNothing, fitOf } from './fit.ts';
import type { SaidNumber } from './segment.ts';

const isPoint = (word: string, { points }: NumberWords): boolean => points.includes(word);

/**
 * Whether a digit may have been lost before a number: a filler stands there ("uh eighteen"), or the digit of the
 * place does ("leg one eighteen", two that ran together), and with such a digit the value would still be possible here.
 * A value that is not a likely one here is doubted even where the longer one is not possible at this place.
 * Where no unit was said, the longer value may be of anything that is measured between these points.
 *
 * @param bare the units of a number without one, where none was said
 */
export function mayLackDigit(row: Measurand, said: SaidNumber, unit: UnitCode, bare: UnitChoice | undefined): boolean {
  const [first, second] = said.words;
  const numbers = said.spokenIn;
  if (first === undefined) return false;
  const longer = (...before: readonly string[]): number | undefined => numbers.read([...before, ...said.words])?.value;
  const possible = (value: number | undefined): boolean =>
    value !== undefined && fitOf(row, value, unit) !== 'impossible';
  const among = bare === undefined ? [] : MEASURANDS.filter(({ at }) => at.join() === row.at.join());
  const possibleThere = (value: number | undefined): boolean =>
    possible(value) ||
    (value !== undefined && among.some((other) => fitOf(other, value, bareUnitOf(other, bare)) !== 'impossible'));
  const lost = (word: string): boolean =>
    possibleThere(longer(word)) || (numbers.and !== undefined && possibleThere(longer(word, numbers.and)));
  if (said.gaps.before && [...numbers.all].some(lost)) return true;
  // "pole one, point two" and "leg one, zero" are never one number.
  const apart =
    isPoint(first, numbers) || (numbers.naughts.has(first) && (second === undefined || isPoint(second, numbers)));
  if (apart || said.follows === undefined || !numbers.ofPlaces.has(said.follows)) return false;
  const joined = longer(said.follows);
  // "leg one hundred twenty one" is 121 either way.
  if (joined === said.number.value) return false;
  if (joined !== undefined && changesNothing(row, said.number.value, joined, unit)) return false;
  return possible(joined) || (joined !== undefined && fitOf(row, said.number.value, unit) !== 'likely');
}

/**
 * Whether a number that is no likely one here may have lost a word: with it, it would be likely ("leg one to ground
 * eighteen"). What was typed in digits has none to lose.
 */
export function mayBeClipped(row: Measurand, { words, number, spokenIn }: SaidNumber, unit: UnitCode): boolean {
  const nothing = number.value === 0 && !isPoint(words[0] ?? '', spokenIn);
  if (words.length === 0 || nothing || fitOf(row, number.value, unit) !== 'possible') return false;
  const likely = (whole: readonly string[]): boolean => {
    const value = spokenIn.read(whole)?.value;
    return value !== undefined && fitOf(row, value, unit) === 'likely';
  };
  // "[one] eighteen", "one hundred and [twenty] one"; "one [point] two".
  const places = Array.from({ length: words.length + 1 }, (_, at) => at);
  return (
    spokenIn.losable.some((lost) => places.some((at) => likely(words.toSpliced(at, 0, ...lost)))) ||
    (mayLackPoint(row, words, spokenIn) && places.some((at) => likely(words.toSpliced(at, 0, spokenIn.points[0]))))
  );
}

/**
 * Whether a point may have stood among digits said one by one ("one [point] two"). A few volts d.c. are a charge that is
 * left, and told at once.
 */
const mayLackPoint = (row: Measurand, words: readonly string[], { digits, minus }: NumberWords): boolean =>
  row.quantity !== 'voltage-dc' && words.every((word) => digits.has(word) || minus.has(word));

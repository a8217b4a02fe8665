import { MEASURANDS, type Measurand } from '../../vocabulary/measurands.ts';
import { NUMBER_WORDS, POINT_WORDS } from '../../vocabulary/number-words.ts';
import type { UnitCode } from '../../vocabulary/quantities.ts';
import { readNumber } from '../numbers/read-number.ts';
import { fitOf } from './fit.ts';
import type { SaidNumber } from './segment.ts';

const isPoint = (word: string): boolean => (POINT_WORDS as readonly string[]).includes(word);

/**
 * Whether a digit may have been lost before a number: a filler stands there ("uh eighteen"), or the digit of the
 * place does ("leg one eighteen", two that ran together), and with such a digit the value would still be possible here.
 * A value that is not a likely one here is doubted even where the longer one is not possible at this place.
 * Where no unit was said, the longer value may be of anything that is measured between these points.
 */
export function mayLackDigit(row: Measurand, said: SaidNumber, unit: UnitCode, unitSaid: boolean): boolean {
  const [first, second] = said.words;
  if (first === undefined) return false;
  const longer = (...before: readonly string[]): number | undefined => readNumber([...before, ...said.words])?.value;
  const possible = (value: number | undefined): boolean =>
    value !== undefined && fitOf(row, value, unit) !== 'impossible';
  const among = unitSaid ? [] : MEASURANDS.filter(({ at }) => at.join() === row.at.join());
  const possibleThere = (value: number | undefined): boolean =>
    possible(value) || (value !== undefined && among.some((other) => fitOf(other, value, other.unit) !== 'impossible'));
  const lost = (word: string): boolean => possibleThere(longer(word)) || possibleThere(longer(word, 'and'));
  if (said.gaps.before && NUMBER_WORDS.some(lost)) return true;
  // "pole one, point two" and "leg one, zero" are never one number.
  const apart = isPoint(first) || (first === 'zero' && (second === undefined || isPoint(second)));
  if (apart || (said.follows !== 'one' && said.follows !== 'two')) return false;
  const joined = longer(said.follows);
  return possible(joined) || (joined !== undefined && fitOf(row, said.number.value, unit) !== 'likely');
}

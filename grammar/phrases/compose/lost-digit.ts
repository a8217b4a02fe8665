import type { Measurand } from '../../vocabulary/measurands.ts';
import { TEEN_WORDS, TENS_WORDS, UNIT_WORDS } from '../../vocabulary/number-words.ts';
import type { UnitCode } from '../../vocabulary/quantities.ts';
import { readNumber } from '../numbers/read-number.ts';
import { fitOf } from './fit.ts';
import type { SaidNumber } from './segment.ts';

const NUMBER_WORDS = [...Object.keys(UNIT_WORDS), ...Object.keys(TEEN_WORDS), ...Object.keys(TENS_WORDS)];

/**
 * Whether a digit may have been lost before a number: a filler stands there ("uh eighteen"), or the digit of the
 * place does ("leg one eighteen", two that ran together), and with such a digit the value would still be possible here.
 */
export function mayLackDigit(row: Measurand, said: SaidNumber, unit: UnitCode): boolean {
  if (said.words.length === 0) return false;
  const heardBefore = said.gaps.before ? NUMBER_WORDS : [];
  const ofPlace = said.follows === 'one' || said.follows === 'two' ? [said.follows] : [];
  return [...heardBefore, ...ofPlace].some((word) => {
    const longer = readNumber([word, ...said.words]);
    return longer !== undefined && fitOf(row, longer.value, unit) !== 'impossible';
  });
}

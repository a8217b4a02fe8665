import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { OPENS_REFRIGERANT } from '../../../grammar/visit/opens-refrigerant.ts';
import { isRefrigerantOpened } from '../../../grammar/visit/refrigerant-work.ts';
import { canMeanFlame } from '../../../grammar/vocabulary/flame-signs.ts';
import { circuitTold } from '../../../grammar/vocabulary/opened-signs.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import { quoteWords } from '../../words/things/quote-words.ts';
import type { Turn } from '../chart/turn.ts';
import { isUnclear, powerMayBeBack } from '../rules/power-may-be-back.ts';
import { tellEarly } from './heed-circuit.ts';
import { circuitDeed, warnOfFlame } from './take-refrigerant.ts';

/**
 * Heeds what words that were not taken whole can tell of the refrigerant circuit, before anything is asked about them: a
 * flame at a charged line, refrigerant let out, what explodes with the oil, and that the circuit was opened, which counts
 * until it is taken back.
 */
export function heedCircuitTold(turn: Turn, utterance: HeardUtterance): void {
  const { verdict, meaning, heard } = utterance.understanding;
  if (!utterance.accepted || verdict === 'logged') return;
  if (canMeanFlame(heard)) warnOfFlame(turn);
  const told = circuitTold(heard);
  if (told.includes('explodes')) turn.warn(SAY_OF_REFRIGERANT.explodes, 'outdoor-load');
  if (told.includes('run-in-vacuum')) turn.warn(SAY_OF_REFRIGERANT.early('run', 'vacuum'), 'outdoor-load');
  if (told.includes('insulation-in-vacuum')) turn.warn(SAY_OF_REFRIGERANT.insulationInVacuum, 'outdoor-load');
  if (told.includes('vented')) turn.warn(SAY_OF_REFRIGERANT.vented, 'outdoor-load');
  if (told.includes('opened') && !namesOpening(meaning)) countAsOpened(turn, quoteWords(heard));
  if (isUnclear(utterance) && powerMayBeBack(utterance, turn.context).length > 0) tellEarly(turn, { how: 'power' });
}

/** What is asked of it names itself what opens the circuit: it is recorded with the answer, or when none comes. */
export function namesOpening(meaning: Meaning): boolean {
  switch (meaning.kind) {
    case 'several':
      return meaning.parts.some(namesOpening);
    case 'part':
      return OPENS_REFRIGERANT[meaning.part];
    case 'work':
      return OPENS_REFRIGERANT[meaning.work];
    case 'report':
      return (
        circuitDeed(meaning.report) === 'opened' ||
        (meaning.report.type === 'job-item' && meaning.report.item === 'circuit-opened')
      );
    default:
      return false;
  }
}

/** The circuit counts as opened by what was said, until that is taken back. */
export function countAsOpened(turn: Turn, words: string): void {
  if (isRefrigerantOpened(turn.context)) return;
  const number = turn.context.events + 1;
  turn.record({ type: 'refrigerant.told', what: 'opened', number, words });
  turn.say('answer', SAY_OF_REFRIGERANT.countsAsOpened);
}

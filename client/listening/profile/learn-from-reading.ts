import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { GATES } from '../recogniser/gates.ts';
import { type VisitHearingParts, visitGrammar } from '../visit-hearing.ts';
import { asHeard, type SaidAloud } from './as-heard.ts';
import { type Learnt, learnAndMeasure } from './learn-voice.ts';

/** What most of what is read aloud is expected as: a number of volts. */
const NUMBERS: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };

/**
 * Learns a voice from what was read aloud, for the model that an ear of these parts hears by first. The sound goes the
 * way of the ear before it is learnt from.
 *
 * @param tell how much of it is done, 0…1
 * @throws ListeningError `model-missing`, `grammar-unknown-word`
 */
export function learnFromReading(
  { speech, model, rnnoise }: Pick<VisitHearingParts, 'speech' | 'model' | 'rnnoise'>,
  read: readonly SaidAloud[],
  tell: (share: number) => void,
): Promise<Learnt> {
  const said = read.map((one) => asHeard(one, rnnoise));
  const expected = visitGrammar(NUMBERS) ?? '';
  const parts = { speech, model, pronunciations: PRONUNCIATIONS, gate: GATES[model.id], expected };
  return learnAndMeasure(parts, said, tell);
}

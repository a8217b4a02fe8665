import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import { GATES } from '../recogniser/gates.ts';
import { makeDither } from '../sound/dither.ts';
import type { VisitHearingParts } from '../visit-hearing.ts';
import { SAMPLE_RATE } from '../wav.ts';
import { type Learnt, learnAndMeasure, type SaidAloud } from './learn-voice.ts';

/** Of quiet before and behind each sentence. */
const AROUND = SAMPLE_RATE / 2;

/**
 * Learns a voice from what was read aloud, for the model that an ear of these parts hears by first.
 *
 * @param tell how much of it is done, 0…1
 * @throws ListeningError `model-missing`, `grammar-unknown-word`
 */
export function learnFromReading(
  { speech, model }: Pick<VisitHearingParts, 'speech' | 'model'>,
  read: readonly SaidAloud[],
  tell: (share: number) => void,
): Promise<Learnt> {
  const said = read.map(({ words, sound }) => ({ words, sound: padded(sound) }));
  return learnAndMeasure({ speech, model, pronunciations: PRONUNCIATIONS, gate: GATES[model.id] }, said, tell);
}

function padded(sound: Float32Array): Float32Array {
  const whole = new Float32Array(sound.length + 2 * AROUND);
  whole.set(sound, AROUND);
  makeDither()(whole);
  return whole;
}

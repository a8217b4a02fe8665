import { OBSERVATIONS, type ObservationId } from '../../../grammar/vocabulary/observations.ts';

/** Names with a word that is listened for while the mouth speaks are said in another way; it is understood as well. */
const SPOKEN_NAMES: Readonly<Partial<Record<ObservationId, string>>> = {
  'compressor-very-hot': 'compressor is burning to the touch',
  'compressor-not-hot': 'compressor is cool',
  'no-oil-stain': 'joints are clean',
};

export function observationWords(id: ObservationId): string {
  const spoken = SPOKEN_NAMES[id];
  if (spoken !== undefined) return spoken;
  return OBSERVATIONS.find((observation) => observation.id === id)?.name ?? id;
}

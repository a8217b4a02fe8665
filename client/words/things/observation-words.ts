import { OBSERVATIONS_BY_ID, type ObservationId } from '../../../grammar/vocabulary/observations.ts';

/** As it is said aloud: a name with a word that is listened for while the mouth speaks is said in another way. */
export function observationWords(id: ObservationId): string {
  const row = OBSERVATIONS_BY_ID[id];
  return 'aloud' in row ? row.aloud : row.name;
}

/** Without what was looked at and what the call is for: "not turning"; in the words it was said in, where there are such. */
export function briefObservationWords(id: ObservationId, as?: string): string {
  return (as ?? observationWords(id)).replace(/^.*? (?:is|are) /, '').replace(/ for cooling$/, '');
}

import type { Meaning } from '../../grammar/phrases/meaning.ts';
import { CAPACITOR_ZONES } from '../visit/rules/isolation.ts';

/** Every section of the outdoor capacitors led off in one go. */
export const DISCHARGED: Meaning = {
  kind: 'several',
  parts: CAPACITOR_ZONES.map((zone) => ({ kind: 'report', report: { type: 'discharged', zone } })),
};

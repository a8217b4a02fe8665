import type { CoverId } from '../../../grammar/vocabulary/covers.ts';
import { DEEDS_BY_ID, type LeadsOf } from '../../../grammar/vocabulary/deeds.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { PARTS_BY_ID, type PartId } from '../../../grammar/vocabulary/parts.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { COVER_NAMES } from '../things/deed-words.ts';

/** The switch that opens a circuit at each place. */
export const SWITCH_NAMES: Readonly<Record<IsolationPlace, string>> = {
  outdoor: 'outdoor disconnect',
  panel: 'panel breaker',
  'air-handler': 'air handler switch',
};

/** What power meets when it comes back, each by name. */
export const MET_BY_POWER = {
  coverOff: (cover: CoverId) => `${COVER_NAMES[cover]} off`,
  partOut: (part: PartId) => `${nameIn(PARTS_BY_ID, part)} out`,
  leadsOff: (part: LeadsOf) => nameIn(DEEDS_BY_ID, `${part}-leads-off`).replace(' are', ''),
  bypassed: 'a bypassed switch',
  refusedPart: (words: string) => `${words}, refused`,
  locked: (place: IsolationPlace) => `${SWITCH_NAMES[place]} recorded locked`,
} as const;

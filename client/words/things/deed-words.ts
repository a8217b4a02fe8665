import type { Deed } from '../../../grammar/visit/events.ts';
import type { CoverId } from '../../../grammar/vocabulary/covers.ts';
import { DEEDS_BY_ID } from '../../../grammar/vocabulary/deeds.ts';
import { PARTS_BY_ID } from '../../../grammar/vocabulary/parts.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';

/** Covers as they are named aloud. */
export const COVER_NAMES: Readonly<Record<CoverId, string>> = {
  unit: 'cover of the unit',
  'compressor-terminals': 'terminal cover',
};

export function deedWords(report: Deed): string {
  switch (report.type) {
    case 'part-moved':
      return `${nameIn(PARTS_BY_ID, report.part)} ${report.to === 'out' ? 'taken out' : 'back in'}`;
    case 'cover':
      return `${COVER_NAMES[report.cover]} ${report.state === 'off' ? 'off' : 'back on'}`;
    case 'deed':
      return nameIn(DEEDS_BY_ID, report.deed);
  }
}

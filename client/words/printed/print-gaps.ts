import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import type { PrintTimes } from './print-times.ts';

type Gap = VisitRecord['notRead'][number];

/** So much of a name that nobody here has given is printed. */
const SHOWN = 40;

/** "entry 57 is damaged and left out here: it was to be a reading logged". */
export function gapWords({ entry, why, type = '' }: Gap): string {
  const kind = type.slice(0, SHOWN).replaceAll('.', ' ');
  switch (why) {
    case 'unreadable':
      return `entry ${entry} cannot be read, and what it held is not here`;
    case 'damaged':
      return `entry ${entry}, of the kind “${kind}”, is damaged, and what it held is not here`;
    case 'unknown kind':
      return `entry ${entry} is of a kind that this version does not know, “${kind}”, and what it held is not here`;
  }
}

/** Each entry that could not be read, at its time. */
export function gapLines({ notRead }: VisitRecord, times: PrintTimes): readonly string[] {
  return notRead.map((gap) => `${times.clock(gap.at)}: ${gapWords(gap)}.`);
}

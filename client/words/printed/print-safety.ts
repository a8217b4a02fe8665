import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { cautionsTold } from '../../../grammar/visit/cautions-told.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { ZONE_NAMES, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { ENERGY_WORDS } from '../shown/energy-names.ts';
import { showPlace } from '../shown/show-reading.ts';
import { asOpen } from '../talk/doubt-words.ts';
import { withRatings } from './print-open.ts';
import { refrigerantLacks } from './print-refrigerant.ts';
import type { Footnotes } from './print-sources.ts';
import type { PrintTimes } from './print-times.ts';

const FROM = {
  'own-device': ', from a device of their own',
  'this-device': ', on this device',
  unproven: ', as this device says: no signature shows it',
} as const;

/** Each proof with its meter before and after, and every pair that was read. */
export function proofLines({ proofs }: VisitRecord, times: PrintTimes): readonly string[] {
  return proofs.map(({ at, zone, before, values, places = [], after, result }) => {
    const pairs = values.map((value, index) => {
      const place = places[index] ?? [];
      return place.length === 0 ? `${value} V` : `${showPlace(place as PointId[])} ${value} V`;
    });
    return `${times.clock(at)}, ${ZONE_NAMES[zone]}: meter on a live source ${before} V; ${pairs.join(', ')}; meter on the live source again ${after} V: ${result}.`;
  });
}

/** What was reported of each switch, and whether it was taken back. */
export function switchLines({ switches }: VisitRecord, times: PrintTimes): readonly string[] {
  return switches.map(({ at, place, state, device, withdrawn }) => {
    const which = `${device?.replaceAll('-', ' ') ?? 'switch'} at the ${PLACES[place]}`;
    return `${times.clock(at)}: ${which} ${STATES[state]}${withdrawn ? '; taken back, it does not count' : ''}`;
  });
}

const PLACES = { outdoor: 'outdoor unit', panel: 'panel', 'air-handler': 'air handler' } as const;
const STATES: Readonly<Record<VisitRecord['switches'][number]['state'], string>> = {
  unknown: 'no longer known to be off',
  closed: 'on',
  open: 'off, not locked',
  locked: 'off and locked',
};

/** Each caution in the words that were spoken, with when and whether it was acknowledged; one that was told again once. */
export function cautionLines({ cautions }: VisitRecord, times: PrintTimes, notes: Footnotes): readonly string[] {
  return cautionsTold(cautions, (line) => line.acknowledged !== undefined).map(({ lines, open }) => {
    const [first] = lines;
    const zone = first.zone === undefined ? '' : `, ${ZONE_NAMES[first.zone]}`;
    const when = [...new Set(lines.map(({ at }) => times.clock(at)))].join(', ');
    const late = lines.find((line) => line.late);
    const acknowledged = lines.findLast((line) => line.acknowledged !== undefined)?.acknowledged;
    const at = acknowledged === undefined ? '' : times.clock(acknowledged);
    const since = at === '' ? 'not acknowledged' : `acknowledged ${at}, not since`;
    const answer = open ? since : `acknowledged ${at}`;
    const shown = lines.some((line) => line.shown === true) ? ' Shown, not spoken.' : '';
    const behind = late === undefined ? '' : ` Told late${late.why === undefined ? '' : `: ${late.why}`}.`;
    return `${when}${zone}: “${first.words}” ${answer}.${shown}${behind}${notes.mark(first.source)}`;
  });
}

/** Where hands were without a proof, who was hurt, checks without an answer. */
export function troubleLines(record: VisitRecord, times: PrintTimes): readonly string[] {
  return [
    ...record.injuries.map(({ at }) => `${times.clock(at)}: somebody was hurt.`),
    ...record.unproven.map(
      ({ at, what, zone, state }) =>
        `${times.clock(at)}: work where power was not proven off: ${withRatings(what, record)}. ${ZONE_NAMES[zone]}: ${ENERGY_WORDS[state]}.`,
    ),
    ...refrigerantLacks(record).map((lack) => `${capital(lack)}.`),
    ...record.unanswered.map(
      ({ at, times: put }) => `${times.clock(at)}: the check on the technician was put ${put} times without an answer.`,
    ),
    ...record.waited.map(({ at, words }) => `${times.clock(at)}: read by a trainee alone, not taken: ${words}.`),
    ...record.overrides.map(
      ({ at, why, reason }) =>
        `${times.clock(at)}: closed all the same: ${why.map((words) => capital(withRatings(asOpen(words), record)).replace(/\.?$/, '.')).join(' ')} Reason: ${reason}`,
    ),
  ];
}

export function supervisorLines(record: VisitRecord, times: PrintTimes): readonly string[] {
  return [
    ...record.acknowledgements.map(
      ({ at, supervisor, from }) =>
        `${times.clock(at)}: live steps acknowledged by ${supervisor}${from === undefined ? '' : FROM[from]}`,
    ),
    ...record.remarks.map(
      ({ at, author, text, from }) => `${times.clock(at)}: ${author}${from === undefined ? '' : FROM[from]}: ${text}`,
    ),
  ];
}

/** How each zone stood when the visit ended; what was never told of is summed up. */
export function energyLines({ energy }: VisitRecord): readonly string[] {
  const known = ZONES.filter((zone) => energy[zone] !== 'unknown');
  const unknown = ZONES.filter((zone) => energy[zone] === 'unknown');
  return [
    ...known.map((zone: ZoneId) => `${ZONE_NAMES[zone]}: ${ENERGY_WORDS[energy[zone]]}`),
    ...(unknown.length === 0 ? [] : [`not known: ${unknown.map((zone) => ZONE_NAMES[zone]).join(', ')}`]),
  ];
}

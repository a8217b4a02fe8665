import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import type { CoverId } from '../../../grammar/vocabulary/covers.ts';
import { LEADS_OF } from '../../../grammar/vocabulary/deeds.ts';
import { ISOLATION_PLACES } from '../../../grammar/vocabulary/isolation-places.ts';
import type { FittedPartId, PartId } from '../../../grammar/vocabulary/parts.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { showPart } from '../shown/show-part.ts';
import { asOpen, NOT_CLOSED } from '../talk/doubt-words.ts';
import { OPEN } from '../talk/summary-words.ts';
import { partWords } from '../things/part-words.ts';
import { refrigerantLacks } from './print-refrigerant.ts';

/** What a close left open, or what is open where a visit was not closed; and what the work at the circuit lacks. */
export function openLines(record: VisitRecord): readonly string[] {
  const open = record.summary?.openItems.map((words) => withRatings(asOpen(words), record)) ?? openSoFar(record);
  return [...new Set([...open, ...refrigerantLacks(record)])];
}

/** Words of a record in which a part stands as it was said, with its ratings in digits. */
export function withRatings(words: string, { parts }: VisitRecord): string {
  return parts
    .filter(({ ratings }) => Object.keys(ratings).length > 0)
    .reduce((text, { part, ratings }) => text.replaceAll(partWords(part, ratings), showPart(part, ratings)), words);
}

/** By the last that was told of each thing: nothing asks for it any more, so it stands open. */
function openSoFar(record: VisitRecord): readonly string[] {
  const { parts, works, readings, observations, items, signatures } = record;
  const repaired = parts.length + works.length > 0;
  const proved = readings.some(({ phase, withdrawn }) => phase === 'prove' && !withdrawn);
  const unsigned = (who: 'technician' | 'customer') =>
    !signatures.some((one) => one.who === who) &&
    !(who === 'customer' && items.some(({ item }) => item === 'customer-not-present'));
  return [
    ...(repaired && !proved ? [OPEN.notProved] : []),
    ...switchesOff(record),
    ...handsLeft(record),
    ...record.refusedParts.map(({ words }) => asOpen(NOT_CLOSED.refusedPart(words))),
    ...unprovenWork(record),
    ...(observations.some(({ observation }) => observation === 'covers-on') ? [] : [OPEN.covers]),
    ...(items.some(({ item }) => item === 'thermostat-as-agreed') ? [] : [OPEN.thermostat]),
    ...parts.flatMap(({ part, doubts }) => doubts.map((doubt) => OPEN.doubted(part as FittedPartId, doubt))),
    ...(['technician', 'customer'] as const).filter(unsigned).map((who) => OPEN.unsigned[who]),
  ];
}

/** What was done in each zone that was not proven dead then, each thing once. */
function unprovenWork(record: VisitRecord): readonly string[] {
  return ZONES.flatMap((zone) => {
    const what = [...new Set(record.unproven.filter((line) => line.zone === zone).map((line) => line.what))];
    return what.length === 0 ? [] : [withRatings(asOpen(NOT_CLOSED.unproven(zone, what)), record)];
  });
}

function switchesOff({ switches }: VisitRecord): readonly string[] {
  return ISOLATION_PLACES.flatMap((place) => {
    const state = switches.findLast((line) => line.place === place && !line.withdrawn)?.state;
    if (state === 'locked') return [asOpen(NOT_CLOSED.locked(place))];
    return state === 'open' ? [OPEN.switchOpen(place)] : [];
  });
}

/** Covers off, parts out, leads off, a jumper or a bypass in. */
function handsLeft({ deeds, observations, parts, wires }: VisitRecord): readonly string[] {
  const allOn = observations.findLast(({ observation }) => observation === 'covers-on')?.at ?? '';
  const last = new Map(deeds.filter(({ deed }) => deed !== 'deed').map((line) => [`${line.deed} ${line.of}`, line]));
  const moved = [...last.values()].flatMap(({ deed, of, to, at }) => {
    if (deed === 'cover') return to === 'off' && at >= allOn ? [OPEN.coverOff(of as CoverId)] : [];
    const replaced = parts.some((line) => line.at >= at && line.part.endsWith(of));
    return to === 'out' && !replaced ? [OPEN.partOut(of as PartId)] : [];
  });
  const lastDeed = (wanted: (of: string) => boolean) =>
    deeds.findLast(({ deed, of }) => deed === 'deed' && wanted(of))?.of;
  const bypass = lastDeed((of) => of === 'switch-bypassed' || of === 'bypass-off');
  const jumpers = wires.reduce(
    (count, { action }) => count + (action === 'jumper-on' ? 1 : action === 'jumper-off' ? -1 : 0),
    0,
  );
  return [
    ...moved,
    ...LEADS_OF.filter((part) => lastDeed((of) => of.startsWith(`${part}-leads-`)) === `${part}-leads-off`).map(
      OPEN.leadsOff,
    ),
    ...(bypass === 'switch-bypassed' ? [OPEN.bypassed] : []),
    ...(jumpers > 0 ? [asOpen(NOT_CLOSED.jumper)] : []),
  ];
}

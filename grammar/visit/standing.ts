import type { CoverId } from '../vocabulary/covers.ts';
import { LEADS_OF, type LeadsOf } from '../vocabulary/deeds.ts';
import type { JobItemId } from '../vocabulary/job-items.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { PartId } from '../vocabulary/parts.ts';
import type { WireMove } from './events.ts';
import type { PartLine, ReadingLine, RefusedPart, VisitFacts, WorkLine } from './facts.ts';
import type { Question } from './questions.ts';

/** Readings that were not taken back, in their order. */
export function standingReadings({ readings }: VisitFacts): readonly ReadingLine[] {
  return readings.filter(({ withdrawn }) => !withdrawn);
}

/** The latest reading that was not taken back. */
export function latestReading({ readings }: VisitFacts): ReadingLine | undefined {
  return readings.findLast(({ withdrawn }) => !withdrawn);
}

/** How much was read or seen of the unit: a call that was set, a cover and a pair of a proof tell nothing of it. */
export function evidenceSeen({ readings, observations }: VisitFacts): number {
  const read = readings.filter(({ under }) => under.locked !== true).length;
  return read + observations.filter(({ observation }) => !/^(thermostat|covers)-/.test(observation)).length;
}

/** The question that is put now; others may wait behind it. */
export function openQuestion({ questions }: VisitFacts): Question | undefined {
  return questions[0]?.question;
}

export function hasItem({ items }: VisitFacts, item: JobItemId): boolean {
  return items.some((line) => line.item === item);
}

export function wasSeen({ observations }: VisitFacts, observation: ObservationId): boolean {
  return observations.some((line) => line.observation === observation);
}

/** Wires and jumpers as they were moved, those taken back left out. */
export function wireMoves({ wires }: VisitFacts): readonly WireMove[] {
  return wires.map(({ wire }) => wire);
}

/** Covers that were told off and not on again since, each by itself or all of them. */
export function coversOff({ deeds, observations }: VisitFacts): readonly CoverId[] {
  const allOn = observations.findLast(({ observation }) => observation === 'covers-on')?.seq ?? 0;
  const off = new Set<CoverId>();
  for (const { seq, deed } of deeds) {
    if (deed.type !== 'cover' || seq < allOn) continue;
    if (deed.state === 'off') off.add(deed.cover);
    else off.delete(deed.cover);
  }
  return [...off];
}

/** Parts that were told out, and neither back in nor another fitted since. */
export function partsOut({ deeds, parts }: VisitFacts): readonly PartId[] {
  const out = new Map<string, { readonly seq: number; readonly part: PartId }>();
  for (const { seq, deed } of deeds) {
    if (deed.type !== 'part-moved') continue;
    if (deed.to === 'out') out.set(kindOf(deed.part), { seq, part: deed.part });
    else out.delete(kindOf(deed.part));
  }
  return [...out]
    .filter(([kind, { seq }]) => !parts.some((line) => kindOf(line.part) === kind && line.seq > seq))
    .map(([, { part }]) => part);
}

/** Fuses and breakers that were refused, and neither told out nor replaced by another since. */
export function overcurrentLeft({ refusedParts, deeds }: VisitFacts): readonly RefusedPart[] {
  return refusedParts.filter(
    ({ part, seq }) => !deeds.some(({ deed, seq: at }) => at > seq && deed.type === 'part-moved' && deed.part === part),
  );
}

/** "The capacitor" that came out may be the dual one that goes in. */
function kindOf(part: string): string {
  return part === 'dual-capacitor' ? 'capacitor' : part;
}

/** A protecting switch was told bypassed, and neither the bypass nor a jumper taken out since. */
export function isBypassed({ deeds, wires }: VisitFacts): boolean {
  const last = deeds.findLast(
    ({ deed }) => deed.type === 'deed' && (deed.deed === 'switch-bypassed' || deed.deed === 'bypass-off'),
  );
  if (last?.deed.type !== 'deed' || last.deed.deed !== 'switch-bypassed') return false;
  return !wires.some(({ seq, wire }) => seq > last.seq && wire.action === 'jumper-off');
}

/** Parts whose leads were told off as a whole, and not on again. */
export function leadsOff({ deeds }: VisitFacts): readonly LeadsOf[] {
  return LEADS_OF.filter((part) => {
    const last = deeds.findLast(({ deed }) => deed.type === 'deed' && deed.deed.startsWith(`${part}-leads-`));
    return last?.deed.type === 'deed' && last.deed.deed === `${part}-leads-off`;
  });
}

/** Parts fitted and work done without one, in their order. */
export function repairsMade({ parts, works }: VisitFacts): readonly (PartLine | WorkLine)[] {
  return [...parts, ...works].toSorted((a, b) => a.number - b.number);
}

/** The customer's answer to the work stands at no, and no work was done since. */
export function isDeclined(facts: VisitFacts): boolean {
  const answer = facts.items.findLast(({ item }) => item.startsWith('consent-'));
  if (answer?.item !== 'consent-refused') return false;
  return repairsMade(facts).every(({ seq }) => seq < answer.seq);
}

/** It was agreed that the sound of what is said may be kept. Without an answer it may not. */
export function keepsSound({ items }: VisitFacts): boolean {
  return items.findLast(({ item }) => item === 'sound-kept' || item === 'sound-not-kept')?.item === 'sound-kept';
}

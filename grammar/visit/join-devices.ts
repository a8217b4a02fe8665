import type { VisitEvent } from './events.ts';

/**
 * One visit from the records of several devices. The technician's device holds the lease: its events are the visit. Of
 * every other device only remarks are taken, each placed by the time it claims; whatever else a second device has
 * logged does not count, so that two devices never both say what was measured.
 */
export function joinDevices(
  technician: readonly VisitEvent[],
  others: readonly (readonly VisitEvent[])[],
): readonly VisitEvent[] {
  const remarks = others.flat().filter((event) => event.type === 'remark.made');
  const joined: VisitEvent[] = [...technician];
  for (const remark of remarks.toSorted((a, b) => claimed(a) - claimed(b))) {
    const after = joined.findLastIndex((event) => claimed(event) <= claimed(remark));
    joined.splice(Math.max(after, batchEnd(joined, after)) + 1, 0, remark);
  }
  return joined;
}

function claimed(event: VisitEvent): number {
  return Date.parse(event.type === 'input.taken' ? event.input.time.at : event.time.at);
}

/** A batch (an input and what came of it) is never cut by a remark. */
function batchEnd(events: readonly VisitEvent[], index: number): number {
  const next = events.findIndex((event, at) => at > index && event.type === 'input.taken');
  return next < 0 ? events.length - 1 : next - 1;
}

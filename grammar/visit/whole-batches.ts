import type { VisitEvent } from './events.ts';

/** How many events from the first on are whole batches: each an input with all that came of it. */
export function wholeBatches(events: readonly VisitEvent[]): number {
  const start = events.findLastIndex((event) => event.type === 'input.taken');
  const last = events[start];
  if (last?.type !== 'input.taken') return events.length;
  return events.length - start - 1 >= (last.outcomes ?? 0) ? events.length : start;
}

import type { VisitEvent } from './events.ts';

/** What an event or a timer was called in records of earlier versions. A row stays for as long as such records are read. */
const OLDER_EVENTS: Readonly<Record<string, VisitEvent['type']>> = { 'circuit.judged': 'refrigerant.judged' };
const OLDER_TIMERS: Readonly<Record<string, string>> = { circuit: 'refrigerant' };

/** An event as it is called today. Whoever reads a record takes its events through here; what is current passes as it is. */
export function inTodaysNames(event: VisitEvent): VisitEvent {
  const type = OLDER_EVENTS[event.type];
  if (type !== undefined) return { ...event, type } as VisitEvent;
  if (event.type === 'input.taken' && event.input?.type === 'timer.elapsed') {
    const timer = OLDER_TIMERS[event.input.timer];
    if (timer !== undefined) return { ...event, input: { ...event.input, timer } } as VisitEvent;
  }
  return event;
}

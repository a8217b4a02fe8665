import type { VisitEvent } from '../../../grammar/visit/events.ts';

/**
 * The event in a body as it stands in a record. A body that holds no event (of a newer version, or damaged) becomes one
 * of an unknown type, so that it keeps its number and is shown as such.
 */
export function readBody(body: string): VisitEvent {
  const event = parse(body);
  const type = typeOf(event);
  if (type === undefined) return unknownEvent('unreadable');
  if (type === 'input.taken') return isInput(event) ? (event as VisitEvent) : unknownEvent(type);
  return isTimed(event) ? (event as VisitEvent) : unknownEvent(type);
}

function parse(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return undefined;
  }
}

function typeOf(event: unknown): string | undefined {
  if (typeof event !== 'object' || event === null || !('type' in event)) return undefined;
  return typeof event.type === 'string' ? event.type : undefined;
}

function isInput(event: unknown): boolean {
  return typeof event === 'object' && event !== null && 'input' in event && isTimed(event.input);
}

function isTimed(event: unknown): boolean {
  if (typeof event !== 'object' || event === null || !('time' in event)) return false;
  const { time } = event;
  if (typeof time !== 'object' || time === null || !('at' in time) || !('mono' in time)) return false;
  return typeof time.at === 'string' && typeof time.mono === 'number';
}

/** Stands where something unknown stands; its time is filled in from its neighbour by `readBodies`. */
function unknownEvent(type: string): VisitEvent {
  return { type, time: { at: '', mono: Number.NaN } } as unknown as VisitEvent;
}

/** The events in bodies, in order. What carries no time is given that of the event before it. */
export function readBodies(bodies: readonly string[]): readonly VisitEvent[] {
  let last = { at: '1970-01-01T00:00:00.000Z', mono: 0 };
  return bodies.map((body) => {
    const event = readBody(body);
    if (event.type === 'input.taken') {
      last = event.input.time;
      return event;
    }
    if (Number.isNaN(event.time.mono)) return { ...event, time: last };
    last = event.time;
    return event;
  });
}

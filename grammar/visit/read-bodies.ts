import type { VisitEvent } from './events.ts';
import type { InputTime } from './inputs.ts';
import { parseBody } from './parse-body.ts';

/** A type that no version writes: a fold lists it as unknown. */
export const UNREADABLE = 'unreadable';

/**
 * The events in the bodies of a record, in order. A body that holds no event (damaged, or of quite another version) still
 * keeps its number: it becomes one of a type that is unknown, at the time of the event before it,
 * or, before all others, of the one behind it.
 *
 * @param before the time of the event before the first, where these are read behind others
 */
export function readBodies(bodies: readonly string[], before?: InputTime): readonly VisitEvent[] {
  const events = bodies.map(parseBody);
  let last = before ?? events.map(timeOf).find((time) => time !== undefined) ?? NEVER;
  return events.map((event) => {
    const time = timeOf(event);
    if (time === undefined) return { type: UNREADABLE, time: last } as unknown as VisitEvent;
    last = time;
    return event as VisitEvent;
  });
}

/** The time of an event that was read, for what is read behind it. */
export const lastTimeOf = (event: VisitEvent | undefined): InputTime | undefined => timeOf(event);

const NEVER: InputTime = { at: '1970-01-01T00:00:00.000Z', mono: 0 };

/** The time of something that has the outer form of an event, else undefined. */
function timeOf(event: unknown): InputTime | undefined {
  if (!isObject(event) || typeof event['type'] !== 'string') return undefined;
  const timed = event['type'] === 'input.taken' ? event['input'] : event;
  const time = isObject(timed) ? timed['time'] : undefined;
  return isTime(time) ? time : undefined;
}

/** A moment in UTC (RFC 3339, as every version wrote it) and the running clock. */
export function isTime(time: unknown): time is InputTime {
  if (!isObject(time) || typeof time['at'] !== 'string' || typeof time['mono'] !== 'number') return false;
  return UTC.test(time['at']) && !Number.isNaN(Date.parse(time['at']));
}

const UTC = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?Z$/;

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

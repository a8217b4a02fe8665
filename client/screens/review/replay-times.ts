import type { VisitEvent } from '../../../grammar/visit/events.ts';

/** A stretch longer than this without any event is shortened in replay, in seconds. */
const QUIET_FROM = 4;
/** How long a shortened stretch takes at normal speed, in seconds. */
const QUIET_TAKES = 1.5;

/**
 * When each event stands on the replay's clock: seconds since the first, by the recording device's own running clock,
 * never going back (a device may have been restarted with a wrong wall clock).
 */
export function replayTimes(events: readonly VisitEvent[]): readonly number[] {
  let latest = 0;
  let first: number | undefined;
  return events.map((event) => {
    const { mono } = event.type === 'input.taken' ? event.input.time : event.time;
    first ??= mono;
    latest = Math.max(latest, (mono - first) / 1000);
    return latest;
  });
}

/** How many events have happened by a moment. */
export function countAt(times: readonly number[], moment: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) <= moment + 1e-6) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The moment after the replay has run on for so many seconds; quiet stretches pass faster. */
export function runOn(times: readonly number[], moment: number, seconds: number): number {
  const end = times.at(-1) ?? 0;
  let at = moment;
  let left = seconds;
  while (left > 1e-9 && at < end) {
    const count = countAt(times, at);
    const next = times[count] ?? end;
    const from = times[count - 1] ?? 0;
    const gap = next - from;
    const pace = gap > QUIET_FROM ? gap / QUIET_TAKES : 1;
    const needed = (next - at) / pace;
    if (needed > left) return at + left * pace;
    left -= needed;
    at = next;
  }
  return Math.min(at, end);
}

/** The moment of the next event after, or the last one before, a moment. Events of the same moment count as one. */
export function stepEvent(times: readonly number[], moment: number, way: 'on' | 'back'): number {
  if (way === 'on') return times[countAt(times, moment)] ?? times.at(-1) ?? 0;
  const before = times.findLast((time) => time < moment - 1e-6);
  return before ?? 0;
}

/** "1:02:03" or "2:03.5". */
export function showMoment(moment: number): string {
  const tenths = Math.round(moment * 10);
  const hours = Math.floor(tenths / 36_000);
  const minutes = Math.floor(tenths / 600) % 60;
  const rest = (tenths % 600) / 10;
  if (hours > 0) return `${hours}:${String(minutes).padStart(2, '0')}:${String(Math.floor(rest)).padStart(2, '0')}`;
  return `${minutes}:${rest.toFixed(1).padStart(4, '0')}`;
}

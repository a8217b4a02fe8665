import { hoursAndMinutes } from '../../words/printed/print-times.ts';
import { readScreenSettings } from '../session/screen-settings.ts';

const DAY = { year: 'numeric', month: 'short', day: 'numeric' } as const;

/** A moment in the reader's own time zone, to the minute, with the clock that was chosen on this device. */
export function showMoment(at: string | number): string {
  return new Date(at).toLocaleString('en', { ...DAY, ...hoursAndMinutes(readScreenSettings().hours) });
}

/** Its time of day alone. */
export function showClock(at: string | number): string {
  return new Date(at).toLocaleTimeString('en', hoursAndMinutes(readScreenSettings().hours));
}

/** Its day alone. */
export function showDay(at: string): string {
  return new Date(at).toLocaleDateString('en', DAY);
}

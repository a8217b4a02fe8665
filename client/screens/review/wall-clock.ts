import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { type ReplayTimes, timeOf } from './replay-times.ts';

/** What the wall clock of the device showed at each moment of the replay, in the time zone of the visit. */
export class WallClock {
  readonly #times: ReplayTimes;
  readonly #walls: readonly number[];
  readonly #format: Intl.DateTimeFormat;

  /** @param zone as an IANA name; one that is missing or is none stands for the reader’s own */
  constructor(events: readonly VisitEvent[], times: ReplayTimes, zone?: string) {
    this.#times = times;
    let before = 0;
    this.#walls = events.map((event) => {
      if (event.type !== 'remark.made') before = Date.parse(timeOf(event).at);
      return before;
    });
    this.#format = formatIn(zone, TIME);
  }

  /** "14:03:07". */
  at(moment: number): string {
    const index = Math.max(0, this.#times.countAt(moment) - 1);
    const wall = (this.#walls[index] ?? 0) + (moment - (this.#times.moments[index] ?? 0)) * 1000;
    return Number.isFinite(wall) ? this.#format.format(wall) : '';
  }
}

const TIME = { hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' } as const;
const DAY_AND_TIME = { ...TIME, day: 'numeric', month: 'short', year: 'numeric' } as const;

/**
 * "28 Nov 2026, 19:49:36": when something was written by a clock of its own.
 *
 * @param zone see `WallClock`
 * @param at RFC 3339; nothing is shown of what is none
 */
export function dayAndTimeIn(zone: string | undefined, at: string): string {
  const wall = Date.parse(at);
  return Number.isFinite(wall) ? formatIn(zone, DAY_AND_TIME, 'en-GB').format(wall) : '';
}

function formatIn(zone: string | undefined, shown: Intl.DateTimeFormatOptions, language = 'en'): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat(language, { ...shown, ...(zone === undefined ? {} : { timeZone: zone }) });
  } catch {
    return new Intl.DateTimeFormat(language, shown);
  }
}

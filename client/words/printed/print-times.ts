/** A clock of twelve hours or of twenty-four. */
export type ClockHours = '12' | '24';

/** "9:00 AM", or "09:00". */
export const hoursAndMinutes = (hours: ClockHours) =>
  hours === '24'
    ? ({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const)
    : ({ hour: 'numeric', minute: '2-digit' } as const);

/** Says moments in one time zone, as people of the trade write them. */
export interface PrintTimes {
  /** "June 15, 2026 at 9:00 AM CDT". */
  readonly day: (at: string) => string;
  /** "9:00 AM". */
  readonly clock: (at: string) => string;
  /** "America/Chicago". */
  readonly zone: string;
}

/**
 * @param zone IANA name; one that this machine does not know, or none, is UTC
 * @param clockHours as the reader's device shows the time
 */
export function printTimes(zone: string | undefined, clockHours: ClockHours = '12'): PrintTimes {
  const timeZone = known(zone);
  const hours = { timeZone, ...hoursAndMinutes(clockHours) } as const;
  const day = new Intl.DateTimeFormat('en-US', { timeZone, year: 'numeric', month: 'long', day: 'numeric' });
  const clock = new Intl.DateTimeFormat('en-US', hours);
  const withZone = new Intl.DateTimeFormat('en-US', { ...hours, timeZoneName: 'short' });
  // The space before AM is a narrow one, which not every terminal shows.
  const plain = (text: string) => text.replaceAll('\u202f', ' ');
  return {
    day: (at) => `${day.format(new Date(at))} at ${plain(withZone.format(new Date(at)))}`,
    clock: (at) => plain(clock.format(new Date(at))),
    zone: timeZone,
  };
}

function known(zone: string | undefined): string {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: zone ?? 'UTC' }).resolvedOptions().timeZone;
  } catch {
    return 'UTC';
  }
}

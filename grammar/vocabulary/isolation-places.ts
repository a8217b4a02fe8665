/** Where a zone's supply can be opened and locked. A thermostat is none of them: it is not isolation. */
export const ISOLATION_PLACES = ['outdoor', 'panel', 'air-handler'] as const;
export type IsolationPlace = (typeof ISOLATION_PLACES)[number];

/** What was last reported of a switch; `locked` means open and locked. */
export type Isolation = 'unknown' | 'closed' | 'open' | 'locked';

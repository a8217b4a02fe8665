/** The supervisor's pages: the list of visits, and one visit on its time line. */
export const REVIEW = {
  visits: 'Visits',
  technicianPage: 'Technician’s page',
  noVisits: 'No visit has reached this server yet.',
  serverGone: 'The server cannot be reached: start it, then load this page again.',
  opened: (role: string, opened: string, entries: number, received: string) =>
    `${role}, opened ${opened}; ${entries} entries, the last received ${received}`,
  notComplete: (held: number, said: number) => `not complete: ${held} held, the device said ${said}`,
  unknownTime: 'at an unknown time',
  visit: (name: string) => `Visit ${name}`,
  allVisits: 'All visits',
  reading: 'Reading the visit…',
  noEntry: 'The server holds no entry of this visit yet; it will be shown as it comes.',
  triedAgain: 'The server cannot be reached; it is tried again by itself.',
  closed: 'closed',
  noServer: 'no server: what is here stays',
  acknowledge: 'Acknowledge the live steps',
  acknowledgeWhy: 'A trainee works here. Whoever acknowledges answers for the live steps that follow, by name.',
  acknowledgedBy: (name: string) => `The record of the visit says: acknowledged by ${name}.`,
  told: 'The device of the trainee was told; its record will say so.',
  following: 'following live',
  connected: 'connected',
} as const;

/** The record as it is printed, and taken away. */
export const PRINTED = {
  open: 'Printed record',
  takeAway: 'Take away:',
  forms: [
    { file: 'record.json', words: 'the visit as JSON' },
    { file: 'readings.csv', words: 'readings as CSV' },
    { file: 'talk.vtt', words: 'the talk as WebVTT' },
    { file: 'events', words: 'the chained events' },
  ],
  reading: 'Reading the visit…',
  print: 'Print, or keep as PDF',
  back: 'Back to the time line',
} as const;

/** Whether a visit's record still is what was written. */
export const CHECK = {
  button: 'Verify the record',
  asking: 'Verifying…',
  notAsked: 'The server cannot be reached: verify again when it is.',
  nothing: (events: number) => `Nothing speaks against its ${events} events.`,
  findings: (count: number) => (count === 1 ? 'One thing is not as it was:' : `${count} things are not as they were:`),
  unknown: (sentence: string) => `Not known: ${sentence}`,
} as const;

/** Where the visit stood at the moment that is shown. */
export const MOMENT = {
  panel: 'At this moment',
  phase: 'phase',
  held: ', held',
  heard: 'heard',
  understood: 'understood',
  said: 'said',
  finding: 'finding',
  none: '–',
  suspects: 'Suspects',
} as const;

export const PLAYER = {
  panel: 'Replay',
  moment: 'Moment of the visit',
  at: (moment: string, end: string, entry: string | undefined) =>
    `${moment} of ${end}: ${entry ?? 'before the first entry'}`,
  stepBack: 'One entry back (,)',
  back: '‹ back',
  pause: 'Pause',
  play: 'Play',
  stepOn: 'One entry on (.)',
  on: 'on ›',
  time: (moment: string, end: string) => `${moment} / ${end}`,
  entry: (count: number) => `entry ${count}`,
  speeds: { slow: 'slow', normal: 'normal', fast: 'fast' },
  live: 'live',
  thisMoment: 'this moment',
} as const;

/** Pictures over the time line, and the tables of what they draw. */
export const TRACKS = {
  readings: 'Readings',
  energy: 'Energy by zone',
  suspects: 'Suspects over time',
  picture: (name: string) => `${name} over time; see the tables`,
  quiet: (lasts: string) => `⋯ ${lasts} ⋯`,
  tables: 'Tables',
  zone: 'Zone',
  became: 'Became',
  because: 'Because',
  entry: 'Entry',
  leadingSuspects: 'Leading suspects',
} as const;

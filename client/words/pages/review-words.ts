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
  noVisit: 'No visit',
  noSuchName:
    'No visit has a name like the one in this address: names are small letters, digits and hyphens. Choose one from the list.',
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
  quietSince: (now: string, last: string) => `${now}; nothing has come since ${last}`,
  connected: 'connected',
} as const;

/** The record as it is printed, and taken away. */
export const PRINTED = {
  open: 'Printed record',
  takeAway: 'Take away',
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

/** One visit, beside its charts. */
export const REPLAY = {
  chips: 'Go to the next',
  chipKey: (key: string) => `To the next (${key}), with Shift to the one before`,
  keys: 'Keys of this page',
  keysShort: '?',
  remark: 'Write a remark',
  tables: 'Tables',
  beforeAfter: 'Before and after the repair',
  noneBeforeAfter: 'Nothing was read both before and after a repair.',
  others: (entries: number) =>
    `${entries} ${entries === 1 ? 'entry' : 'entries'} of other devices do not count: written where another device held the visit.`,
  readingOn: (entries: number) => `Reading the visit… ${entries.toLocaleString('en')} entries have come.`,
} as const;

/** What one goes to from one to the next: its row in the picture, its key and how many there are. */
export const LANDMARK_WORDS = {
  refused: {
    row: 'readings refused',
    key: 'r',
    chip: (n: number) => `${n} ${n === 1 ? 'reading' : 'readings'} refused`,
  },
  /** A proof, a part or a close that was not taken as it was told. */
  'held-back': { row: 'held back', key: 'b', chip: (n: number) => `${n} held back` },
  'set-right': { row: 'set right', key: 's', chip: (n: number) => `${n} set right` },
  caution: { row: 'cautions', key: 'c', chip: (n: number) => `${n} ${n === 1 ? 'caution' : 'cautions'}` },
  warning: { row: 'warnings', key: 'w', chip: (n: number) => `${n} ${n === 1 ? 'warning' : 'warnings'}` },
  proof: { row: 'proofs', key: 'p', chip: (n: number) => `${n} ${n === 1 ? 'proof' : 'proofs'}` },
  unproven: { row: 'not proven', key: 'u', chip: (n: number) => `${n} not proven` },
  remark: { row: 'remarks', key: 'm', chip: (n: number) => `${n} ${n === 1 ? 'remark' : 'remarks'}` },
  hurt: { row: 'hurt', key: 'h', chip: (n: number) => `${n} hurt` },
  clock: { row: 'clock set', key: 't', chip: (n: number) => `clock set ${n} ×` },
} as const;

export const KEYS_HELP = {
  title: 'Keys of this page',
  key: 'Key',
  does: 'Does',
  rows: [
    ['k', 'plays and pauses; Space too, on the slider'],
    ['. and ,', 'one entry on or back'],
    ['← and →', 'five seconds back or on, on the slider'],
    ['Page Up, Page Down', 'a minute on or back, on the slider'],
    ['Home, End', 'to the start or the end, on the slider'],
    ['1, 2, 3', 'slow, normal, fast'],
    ['l', 'follows the newest entry'],
    [
      'c, w, r, b, s, p',
      'to the next caution, warning, reading refused, thing held back, correction, proof; with Shift to the one before',
    ],
    [
      'u, h, m, t',
      'to the next work without proof, injury, remark, setting of the clock; with Shift to the one before',
    ],
    ['?', 'shows this'],
  ],
  letters: 'Letters by themselves are keys here',
  close: 'Close',
} as const;

export const REMARK = {
  label: 'Remark, for the record: it stands beside the visit and changes nothing in it',
  author: 'Your name',
  as: (name: string) => `As ${name}`,
  write: 'Write it into the record',
  written: 'Written: the record holds it now.',
} as const;

/** A visit beside another one to its unit. */
export const COMPARE = {
  title: 'Beside another visit to this unit',
  with: 'Beside',
  choose: 'choose a visit',
  looking: 'Looking for other visits to this unit…',
  none: 'The server holds no other visit to this unit.',
  notRead: 'The other visit cannot be read now: choose it again.',
  open: 'Open that visit',
  option: (opened: Date, site: string, visit: string) =>
    `${opened.toLocaleDateString('en', { dateStyle: 'medium' })}, ${site === '' ? visit : site}`,
  head: (opened: Date) => ['What', 'This visit', opened.toLocaleDateString('en', { dateStyle: 'medium' })],
} as const;

/** Pictures over the time line, and the tables of what they draw. */
export const TRACKS = {
  readings: 'Readings',
  energy: 'Energy by zone',
  suspects: 'Suspects over time',
  picture: (name: string) => `${name} over time; see the tables`,
  quiet: (lasts: string) => `⋯ ${lasts} ⋯`,
  happenings: 'What happened',
  noReadings: 'Readings: none',
  phase: 'phase',
  sound: 'sound',
  axis: ['elapsed', 'clock', 'quiet'],
  energyHead: ['At', 'Zone', 'Became', 'Because'],
  suspectHead: ['At', 'Leading suspects'],
  earlier: (rows: number) => `Show ${rows} earlier rows`,
} as const;

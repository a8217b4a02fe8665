/** The page of a running visit: its strip, its panels and what went wrong at an edge. */
export const VISIT = {
  at: (site: string) => `Visit at ${site}`,
  soFar: 'So far',
  suspects: 'Suspects',
  elseSuspects: 'What else it could be',
  noSuspects: 'No suspects yet: nothing has been read.',
  wires: 'Wires',
  readings: 'Readings',
  answersByTouch: 'Answers by touch',
  checkFirst: 'Sound check: ten seconds, before the first reading',
  stop: 'Stop',
  more: 'More',
  toTheVisits: 'To the visits',
  notSaved: 'Stopped: the last entry is not saved.',
  tryAgain: 'Try again',
  notInRecord: (entered: readonly string[]) => `Entered, not in the record: ${entered.join('; ')}. Enter it again.`,
  seen: 'Noted',
  keptHere: 'The visit goes on here and is kept on this device.',
  visitStopped: 'The program of the visit stopped; what it has taken is kept.',
  diagnosisStopped: 'The diagnosis stopped: load the page again; the record is kept.',
} as const;

/** Whether it listens, speaks and reaches the server. */
export const STRIP = {
  ear: {
    off: 'ear off',
    starting: 'ear starting',
    listening: 'listening',
    hearing: 'hearing you',
    failed: 'ear failed',
  },
  onlyStop: 'only “stop”',
  speaking: 'speaking',
  sayWakeWord: 'say your wake word',
  holdToTalk: 'hold to talk',
  fullTalk: 'full talk',
  shortTalk: 'short talk',
  noVoice: 'no voice',
  voiceComes: 'voice loading',
  spoken: 'spoken',
  server: 'server',
  noServer: 'no server',
  unsent: (count: number) => `${count} unsent`,
} as const;

/** Why it asks what it asks, and what a finding stands on: under the suspects, once it is opened. */
export const WHY_PANEL = {
  title: 'Why',
  next: (test: string) => `Next, ${test}, would show`,
  proved: 'Shown by',
  unproved: 'By exclusion',
  excluded: 'No longer likely',
  moved: 'The last answer moved',
  fromTo: (was: string, is: string) => `${was} → ${is}`,
  nothing: 'Nothing has been read yet.',
} as const;

/** What is asked now, by what is open. */
export const NOW = {
  panel: 'Now',
  workingItOut: 'working it out',
  building: (share: string) => `getting to know this unit, ${share}`,
  leadingSuspect: 'Leading suspect:',
  /** After a repair. */
  elseSuspect: 'What else it could be:',
  lastRead: 'last read:',
  notYet: '–',
  noPlace: 'place?',
  proof: 'Numbers of the proof',
  meter: 'meter',
  asked: 'asked',
  or: 'or',
  titles: {
    closed: 'Visit closed',
    check: 'Check on you',
    held: 'Visit held',
    caution: 'Caution',
    question: 'Question',
    supervisor: 'Supervisor first',
    step: 'Next',
    waiting: 'Readback',
  },
  check: 'Say or touch: I am fine.',
} as const;

/** Letters of a line of the panel: more would push what is to be done off a phone. By whole signs, so that none is cut in two. */
const LONG_LINE = 240;
const shortly = (text: string): string => {
  if (text.length <= LONG_LINE) return text;
  const signs = [...text];
  const left = signs.length - LONG_LINE;
  return left <= 0 ? text : `${signs.slice(0, LONG_LINE).join('')}… (${left} letters more, in the record)`;
};

export const HEARD = {
  shortly,
  panel: 'Heard and understood',
  heard: 'heard',
  nothing: 'nothing yet',
  none: '–',
  understood: 'understood',
  said: 'said',
  type: 'Type what you would say',
  typeInstead: 'type it instead',
  send: 'Send',
} as const;

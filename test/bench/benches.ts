interface BenchAbout {
  readonly says: string;
  /** Its words NAME=VALUE, each with what it is and, in brackets, what it is where it is not given. */
  readonly options: Readonly<Record<string, string>>;
}

/** The benches of this folder, each a file NAME.bench.ts, as the help lists them. */
export const BENCHES: Readonly<Record<string, BenchAbout>> = {
  browser: {
    says: 'the pages in a real browser: size, load, recognition, steps of the diagnosis',
    options: {
      sentences: 'of the library visit, spoken at each speed (14)',
      slow: 'how many times slower the slowed processor is (4)',
    },
  },
  diagnosis: {
    says: 'table, circuit solver against ngspice, steps, quality on simulated units',
    options: { cases: 'simulated visits (96)', designs: 'designs of units they are spread over (4)' },
  },
  hearing: {
    says: 'the ear on recordings and voices: right, asked, wrong, speed; shares with their 95 % interval',
    options: {
      sets: 'orders,foreign,digits,teach,readings,spoken,spliced,continued,fluent,level,behind,urgent,noise,speed,folder (all)',
      people: 'folder of recordings of people',
      digits: 'folder of spoken digits',
      folder: 'folder of recordings of one’s own',
      models: 'both, wideband or bundled (both)',
      half: 'all, tune or report: even or odd recordings (all)',
      every: 'only each Nth sentence (1)',
      from: 'the first of them (0)',
      at: 'levels of noise in dB, or clean (all)',
      minutes: 'minutes of each noise (10)',
    },
  },
  language: {
    says: 'the grammar: lines a second, memory, against a named peer; or what becomes of a file of lines',
    options: { rounds: 'rounds (10)', said: 'file of lines and what they should come to, instead of the rest' },
  },
  list: {
    says: 'the list of many visits: a page, a search, filters, the fleet',
    options: { visits: 'in the index (20000)', rounds: 'of each question (60)' },
  },
  people: {
    says: 'coming in: a sign-in, 10,000 wrong passwords, a connection of a paired device',
    options: { tries: 'wrong passwords (10000)', rounds: 'of what is timed one by one (40)' },
  },
  record: {
    says: 'the record on its way, on SQLite and PostgreSQL: steady visits, a storm of reconnects, kills of the server',
    options: {
      visits: 'at once (2000)',
      rate: 'events a second for each (2)',
      seconds: 'of steady load (10)',
      storm: 'events of the storm (50000)',
      full: 'events sent as fast as they are taken (60000)',
      listed: 'visits that a page of 1,000 is listed of (20000)',
      long: 'events of the visit that is checked (100000)',
      kills: 'of the server (20)',
      only: 'stores: SQLite beside PostgreSQL, and no more (all)',
    },
  },
  replay: {
    says: 'a long visit in the review, in a real browser: opened, and gone through',
    options: {
      events: 'of the visit (10000)',
      loads: 'times it is opened (7)',
      seconds: 'it is gone through (4)',
    },
  },
  talk: {
    says: 'a visit by a technician who does what is asked: utterances, words and seconds of speech',
    options: {
      fault: 'one of the diagnosis’ faults, prompt by prompt (twelve)',
      print: 'yes: prompt by prompt',
      acks: 'yes: a word to each caution before its step is answered',
      from: 'the first design of a unit that is tried (4)',
    },
  },
  turn: {
    says: 'one turn of the visit, and taking a visit up from its record',
    options: { rounds: 'rounds over the recorded visits (20)' },
  },
};

export interface Promised {
  readonly promise: string;
  /** Files of tests, from the project's root. */
  readonly tests: readonly string[];
  /** Names of what they measure (`tellFigure`), in the order in which they are shown. */
  readonly figures: readonly string[];
}

/** What the record promises, and what would fail if it did not hold. */
export const PROMISES: readonly Promised[] = [
  {
    promise:
      'What is acknowledged is on the server’s disk; the server holds a beginning of what the device wrote; both chains verify; once the network heals the server has all; nobody reads another company’s visit',
    tests: ['test/server/record-model.test.ts'],
    figures: ['courses of the model', 'courses until a hasty server is found', 'courses until a blind server is found'],
  },
  {
    promise:
      'A server that is killed loses nothing that it acknowledged; nor does PostgreSQL under it, nor one of two servers',
    tests: ['test/server/kills.test.ts'],
    figures: [
      'kills of the server',
      'events acknowledged before a kill',
      'of these lost',
      'kills of PostgreSQL',
      'events acknowledged before PostgreSQL was killed',
      'of these lost by it',
      'kills of one of two servers',
      'events acknowledged before one of two was killed',
      'of these lost by both',
    ],
  },
  {
    promise:
      'PostgreSQL keeps what SQLite keeps: same contract, guards against change, what was lost is told at the start; several servers on one database fork nothing, and readers at each hear all; a folder that is moved there is the same',
    tests: [
      'test/contract/store.test.ts',
      'test/contract/postgres.test.ts',
      'test/server/postgres.test.ts',
      'test/server/several-servers.test.ts',
      'test/server/move.test.ts',
    ],
    figures: [],
  },
  {
    promise: 'A browser that is killed has kept every entry that it said was kept',
    tests: ['test/contract/log-in-chromium.test.ts'],
    figures: ['kills of the browser', 'entries kept before a kill', 'of these gone'],
  },
  {
    promise: 'A disk that is full or read only, and a clock that is wrong, lose nothing that was acknowledged',
    tests: ['test/server/full-disk.test.ts', 'test/server/read-only-disk.test.ts', 'test/server/clocks.test.ts'],
    figures: [],
  },
  {
    promise:
      'Every visit of a device is sent, whatever page is open, and with none open where the browser can; one of which more is to come is shown as not complete',
    tests: [
      'test/browser/unsent.test.ts',
      'test/browser/background-sync.test.ts',
      'test/server/said-heads.test.ts',
      'test/client/record/many-unsent.test.ts',
    ],
    figures: ['unsent events of one phone', 'events a second of that phone'],
  },
  {
    promise: 'A change in the record or in a device’s file is found, and its first event named',
    tests: ['test/server/tampering.test.ts'],
    figures: ['edits tried', 'of these found'],
  },
  {
    promise:
      'A server that lost something says so at its start; a backup made under load is whole; a copy without its log is refused',
    tests: ['test/server/heads.test.ts'],
    figures: [],
  },
  {
    promise: 'Whoever takes too much of the server, or sends it anything at all, harms only itself',
    tests: [
      'test/server/limits.test.ts',
      'test/server/fuzzed-frames.test.ts',
      'test/server/sync-faults.test.ts',
      'test/server/odd-networks.test.ts',
    ],
    figures: ['fuzzed frames'],
  },
  {
    promise:
      'Nobody reads, writes or changes what their role, company or device does not let them; a wrong password costs little, however often it is tried',
    tests: ['test/server/who-may.test.ts', 'test/server/sign-in.test.ts', 'test/contract/people.test.ts'],
    figures: [
      'requests and messages beyond a role or company',
      'of these let through',
      'wrong passwords tried at one name',
      'of these looked at',
    ],
  },
  {
    promise: 'One damaged event leaves the rest of the visit to be shown; a record of the version before opens',
    tests: ['test/grammar/visit/damaged-events.test.ts', 'test/server/sqlite-store.test.ts'],
    figures: ['damaged events shown'],
  },
  {
    promise: 'What is printed and taken away holds what was recorded, in forms that others check',
    tests: ['test/client/words/printed-sheet.test.ts', 'test/server/exports.test.ts'],
    figures: [],
  },
];

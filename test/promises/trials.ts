/** A long trial of the record, by itself: what it runs, how often, and which of its figures are told at the end. */
export interface Trial {
  readonly says: string;
  readonly test: string;
  /** The name of its test, where the file has others beside it. */
  readonly only?: string;
  /** As often as the long run tries it. */
  readonly tries: number;
  /** The figure that counts what was tried; then others to tell. */
  readonly counts: string;
  readonly figures: readonly string[];
}

export const TRIALS: Readonly<Record<string, Trial>> = {
  'server-kills': {
    says: 'kills of the server while devices write',
    test: 'test/server/kills.test.ts',
    only: 'a server that is killed',
    tries: 200,
    counts: 'kills of the server',
    figures: ['events acknowledged before a kill', 'of these lost'],
  },
  'postgres-kills': {
    says: 'kills of PostgreSQL under a server, while devices write',
    test: 'test/server/kills.test.ts',
    only: 'a PostgreSQL that is killed',
    tries: 200,
    counts: 'kills of PostgreSQL',
    figures: ['events acknowledged before PostgreSQL was killed', 'of these lost by it'],
  },
  'twin-kills': {
    says: 'kills of one of two servers on one PostgreSQL',
    test: 'test/server/kills.test.ts',
    only: 'one of two servers that is killed',
    tries: 200,
    counts: 'kills of one of two servers',
    figures: ['events acknowledged before one of two was killed', 'of these lost by both'],
  },
  'browser-kills': {
    says: 'kills of the browser while it writes',
    test: 'test/contract/log-in-chromium.test.ts',
    only: 'a browser that is killed while it writes',
    tries: 200,
    counts: 'kills of the browser',
    figures: ['entries kept before a kill', 'of these gone'],
  },
  edits: {
    says: 'rounds of edits of a record and of devices’ files, each in twenty ways',
    test: 'test/server/tampering.test.ts',
    tries: 20,
    counts: 'edits tried',
    figures: ['of these found'],
  },
  model: {
    says: 'courses of the record as a model',
    test: 'test/server/record-model.test.ts',
    tries: 10_000,
    counts: 'courses of the model',
    figures: ['courses until a hasty server is found', 'courses until a blind server is found'],
  },
  frames: {
    says: 'frames of anything at all',
    test: 'test/server/fuzzed-frames.test.ts',
    tries: 50_000,
    counts: 'fuzzed frames',
    figures: [],
  },
  unsent: {
    says: 'events that a phone has unsent',
    test: 'test/client/record/many-unsent.test.ts',
    tries: 100_000,
    counts: 'unsent events of one phone',
    figures: ['events a second of that phone'],
  },
};

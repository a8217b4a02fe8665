import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { postgresPrograms } from './server/own-postgres.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const long = process.env['READBACK_RUN'] === 'long';
// The short run tries the same cases each time; the long one others each time: what fails is had again with READBACK_SEED.
if (long) process.env['READBACK_SEED'] ??= String(Math.floor(Math.random() * 2 ** 31));

const files = readdirSync(join(ROOT, 'test'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => ({ name: relative('.', join('test', name)), text: readFileSync(join(ROOT, 'test', name), 'utf8') }));

/** The long run is what the short one leaves out, and what it tries less often. */
const wanted = files.filter(({ name, text }) => {
  if (name.includes('.long.test.')) return long;
  return !long || text.includes('/how-much.ts');
});

/** These change modules or globals under their tests, or count on being loaded anew. */
const APART = /\bvi\.(mock|doMock|resetModules|useFakeTimers|stubGlobal|spyOn)\b/;
/** These open a browser, and what it hears and shows goes by in real time: nothing runs beside them. */
const IN_BROWSER = /\/(readback-browser|serve-page)\.ts/;
const named = (which: 'together' | 'apart' | 'browser') =>
  wanted
    .filter(({ text }) => which === (IN_BROWSER.test(text) ? 'browser' : APART.test(text) ? 'apart' : 'together'))
    .map(({ name }) => name);
const workers = long ? 1 : availableParallelism() + 1;

/** These run on PostgreSQL as well, where one can be had; where not, test/contract/postgres.test.ts says so. */
const ON_POSTGRES = [
  'acknowledge',
  'clocks',
  'exports',
  'fuzzed-frames',
  'limits',
  'list',
  'operations',
  'personal-routes',
  'receipts',
  'said-heads',
  'sign-in',
  'sync-faults',
  'take-over',
  'who-may',
].map((name) => `test/server/${name}.test.ts`);
const postgres = 'missing' in (await postgresPrograms()) ? [] : ON_POSTGRES;

const shared = { root: ROOT, testTimeout: 60_000, hookTimeout: 180_000 };

export default defineConfig({
  test: {
    root: ROOT,
    // Some tests wait for files or for a server: one file more than there are cores. In the long run most hear in real
    // time, and nothing runs beside them.
    maxWorkers: workers,
    reporters: ['default', './test/counts-reporter.ts'],
    projects: [
      // Most files share their modules within a worker: grammar and tables are laid out once, not in a hundred files.
      { test: { ...shared, name: 'together', isolate: false, include: named('together') } },
      { test: { ...shared, name: 'apart', isolate: true, include: named('apart') } },
      ...(postgres.length === 0
        ? []
        : [
            {
              test: {
                ...shared,
                name: 'postgres',
                isolate: false,
                include: wanted.map(({ name }) => name).filter((name) => postgres.includes(name)),
                globalSetup: './test/server/postgres-setup.ts',
                env: { READBACK_TEST_STORE: 'postgres' },
              },
            },
          ]),
      {
        test: {
          ...shared,
          name: 'browser',
          isolate: true,
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
          include: named('browser'),
        },
      },
    ],
  },
});

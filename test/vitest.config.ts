import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

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
const named = (apart: boolean) => wanted.filter(({ text }) => APART.test(text) === apart).map(({ name }) => name);

const shared = { root: ROOT, testTimeout: 60_000, hookTimeout: 60_000 };

export default defineConfig({
  test: {
    root: ROOT,
    // Some tests wait for a browser or for sound: one file more than there are cores. In the long run most hear in real
    // time, and nothing runs beside them.
    maxWorkers: long ? 1 : availableParallelism() + 1,
    reporters: ['default', './test/counts-reporter.ts'],
    projects: [
      // Most files share their modules within a worker: grammar and tables are laid out once, not in a hundred files.
      { test: { ...shared, name: 'together', isolate: false, include: named(false) } },
      { test: { ...shared, name: 'apart', isolate: true, include: named(true) } },
    ],
  },
});

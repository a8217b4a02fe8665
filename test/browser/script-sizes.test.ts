import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { PROJECT_ROOT } from './project-root.ts';

const PAGES = join(PROJECT_ROOT, '.build/web');
const files = readdirSync(join(PAGES, 'assets'));
const textOf = (name: string): string => readFileSync(join(PAGES, 'assets', name), 'utf8');

/** A file of the built pages by the name of its part: "running-visit" is running-visit-HASH.js. */
function fileOf(part: string): string {
  const found = files.filter((name) => name.startsWith(`${part}-`) && name.endsWith('.js'));
  expect(found, part).toHaveLength(1);
  return found[0]!;
}

/** With all that it imports before it runs; what is fetched later, and workers, are none of it. */
function withImports(...starts: readonly string[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const left = [...starts];
  for (let name = left.pop(); name !== undefined; name = left.pop()) {
    if (seen.has(name)) continue;
    seen.add(name);
    for (const [, imported] of textOf(name).matchAll(/(?:from|import)\s*["']\.\/([\w.-]+\.js)["']/g))
      left.push(imported!);
  }
  return seen;
}

const kilobytes = (names: Iterable<string>): number =>
  [...names].reduce((sum, name) => sum + gzipSync(textOf(name), { level: 9 }).length, 0) / 1000;

const entry = /src="\/assets\/([\w.-]+\.js)"/.exec(readFileSync(join(PAGES, 'index.html'), 'utf8'))![1]!;
const visit = () => withImports(entry, fileOf('technician-page'), fileOf('running-visit'), fileOf('visit-session'));
const sheets = () => new Set([...visit(), ...withImports(fileOf('open-sheet'))]);

describe('the scripts of the technician’s page, packed', () => {
  test('are at most 110 kB for the first page that is shown', () => {
    expect(kilobytes(withImports(entry, fileOf('technician-page')))).toBeLessThan(110);
  });

  // The sheets are no more than they are; fewer is better.
  test('are at most 145 kB with a running visit, and 168 kB with all its sheets', () => {
    expect(kilobytes(visit())).toBeLessThan(145);
    expect(kilobytes(sheets())).toBeLessThan(168);
  });

  test('hold neither the grammar’s sounding-alike words nor the review', () => {
    const all = [...sheets()].map(textOf).join('');
    // From near-words.json, and from the review's own words.
    expect(all).not.toContain('excess:25 axes:50');
    expect([...sheets()].filter((name) => name.startsWith('review'))).toEqual([]);
  });

  test('are nowhere counted short: what is imported is there', () => {
    for (const name of sheets()) expect(files).toContain(name);
    expect(sheets().size).toBeGreaterThan(10);
  });
});

describe('the scripts of the practice, packed', () => {
  const start = () => withImports(entry, fileOf('practice-page'));
  const running = () => withImports(entry, fileOf('practice-page'), fileOf('exercising'));

  test('are at most 110 kB for the page that an exercise is chosen on', () => {
    expect(kilobytes(start())).toBeLessThan(110);
  });

  test('are at most 300 kB with a running exercise; its debrief comes behind it', () => {
    expect(kilobytes(running())).toBeLessThan(300);
    const debrief = withImports(entry, fileOf('practice-page'), fileOf('exercising'), fileOf('debrief-view'));
    expect(kilobytes(debrief)).toBeGreaterThan(kilobytes(running()));
  });

  test('hold neither the grammar’s sounding-alike words nor the rows of proof of the diagnosis', () => {
    const all = [...running()].map(textOf).join('');
    expect(all).not.toContain('excess:25 axes:50');
    expect([...running()].filter((name) => /^(english|make-diagnosis|review)/.test(name))).toEqual([]);
  });
});

import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { TOP } from './import-graph.ts';

const tracked = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  cwd: TOP,
  encoding: 'utf8',
})
  .split('\n')
  .filter((path) => path !== '' && existsSync(join(TOP, path)));
const guides = tracked.filter((path) => path.endsWith('.md') && !path.startsWith('fixtures/'));
const scripts = Object.keys(JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')).scripts as object);

const textOf = (path: string): string => readFileSync(join(TOP, path), 'utf8');
const quoted = (text: string): readonly string[] => [...text.matchAll(/`([^`\n]+)`/g)].map((match) => match[1] ?? '');
/** A path of ours: it begins in a room, or names a source file by the end of its path. Words in braces are choices. */
const isPath = (word: string): boolean =>
  /^(client|server|grammar|test|fixtures)\/[\w@.*{},/-]*$/.test(word) ||
  /^[\w*{},/-][\w.*{},/-]*\.(tsx?|css)$/.test(word);

/** Whether something stands at a path, or at any that ends so. `*` and NAME stand for one name, `{a,b}` for each. */
function exists(path: string): boolean {
  const [, before = '', choices, after = ''] = /^([^{]*)\{([^}]*)\}(.*)$/.exec(path) ?? [];
  if (choices !== undefined) return choices.split(',').every((one) => exists(`${before}${one.trim()}${after}`));
  const pattern = path
    .replace(/\/$/, '')
    .replace(/[.+]/g, '\\$&')
    .replace(/\*+|\bNAME\b/g, '[^/]*');
  return tracked.some((file) => new RegExp(`(^|/)${pattern}(/|$)`).test(file));
}

describe.each(guides)('%s', (guide) => {
  const text = textOf(guide);

  it('names no file or folder that is not there', () => {
    expect(
      quoted(text)
        .filter(isPath)
        .filter((path) => !exists(path)),
    ).toEqual([]);
  });

  it('names no command that is not there', () => {
    const run = [...text.matchAll(/npm run (?:-s )?([a-z](?:[a-z:-]*[a-z])?)/g)].map((match) => match[1] ?? '');
    expect(run.filter((name) => !scripts.includes(name))).toEqual([]);
  });

  it('starts no built file without a source', () => {
    const built = [...text.matchAll(/\.build\/([\w/-]+)\.js/g)].map((match) => match[1] ?? '');
    expect(built.filter((path) => !exists(`${path}.ts`))).toEqual([]);
  });
});

describe('a comment in the sources', () => {
  it('names no file that is not there', () => {
    const sources = tracked.filter((path) => /\.(tsx?|css)$/.test(path));
    expect(sources.length).toBeGreaterThan(400);
    const missing = sources.flatMap((source) =>
      [...textOf(source).matchAll(/^\s*(?:\/?\*|\/\/)(.*)$/gm)]
        .flatMap((comment) => [...(comment[1] ?? '').matchAll(/[\w.*/-]*[\w-]\.tsx?\b/g)].map((match) => match[0]))
        .filter((path) => !exists(path))
        .map((path) => `${source}: ${path}`),
    );
    expect(missing).toEqual([]);
  });
});

describe('the check itself', () => {
  it('finds what is not there', () => {
    expect(isPath('client/visit/chart/nowhere.ts')).toBe(true);
    expect(exists('client/visit/chart/nowhere.ts')).toBe(false);
    expect(exists('chart/step-states.ts')).toBe(true);
    expect(exists('faults/*-faults.ts')).toBe(true);
    expect(exists('regions/{step,nowhere}.ts')).toBe(false);
  });
});

import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { importCircles, importsOf, sourceFiles, TOP } from './import-graph.ts';

/** A room may import itself and what stands here; the first match of the longest room name counts. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  'grammar/vocabulary': [],
  'grammar/phrases': ['grammar/vocabulary'],
  'grammar/phrases/languages/english/near-words/node': ['grammar'],
  'grammar/visit': ['grammar/vocabulary', 'grammar/phrases'],
  'grammar/export': ['grammar/vocabulary', 'grammar/phrases', 'grammar/visit'],
  'client/diagnosis': ['grammar/vocabulary'],
  'client/speaking': ['grammar'],
  'client/listening': ['grammar'],
  'client/record': ['grammar'],
  'client/words': ['grammar'],
  'client/visit': ['grammar', 'client/diagnosis', 'client/speaking', 'client/words'],
  'client/practice/plant': ['grammar/vocabulary'],
  'client/practice': ['grammar', 'client/diagnosis', 'client/speaking', 'client/words', 'client/visit'],
  'client/screens': ['grammar', 'client'],
  'client/terminal': ['grammar', 'client'],
  server: ['grammar'],
};
const ROOMS = Object.keys(MAY_IMPORT).sort((a, b) => b.length - a.length);
const roomOf = (path: string): string | undefined => ROOMS.find((room) => path === room || path.startsWith(`${room}/`));

describe('the walls between the rooms', () => {
  const lines = ['grammar', 'client', 'server'].flatMap(sourceFiles).flatMap(importsOf);

  it('lets no room import what its wall forbids', () => {
    const broken = lines.filter(({ from, to }) => {
      const room = roomOf(from);
      const other = roomOf(to);
      if (room === undefined || other === undefined || room === other) return false;
      return !(MAY_IMPORT[room] ?? []).some((allowed) => other === allowed || other.startsWith(`${allowed}/`));
    });
    expect(lines.length).toBeGreaterThan(100);
    expect(broken).toEqual([]);
  });

  it('lets no files import one another around a circle, not even for their types', () => {
    const all = [...lines, ...['test', 'fixtures'].flatMap(sourceFiles).flatMap(importsOf)];
    expect(importCircles(all)).toEqual([]);
    const turned = { from: 'grammar/vocabulary/points.ts', to: 'client/visit/chart/machine.ts' };
    expect(importCircles([...all, turned]).flat()).toContain('client/visit/chart/context.ts');
  });

  it('keeps Node out of every core', () => {
    const inCore = lines.filter(
      ({ from, to }) =>
        to.startsWith('node:') && !/^(server|client\/terminal)\/|\/(node|worker)\/|vite\.config|\/build\//.test(from),
    );
    expect(inCore).toEqual([]);
  });

  it('holds at the top level only what the design card lists, the lock file and dotfiles', () => {
    const tracked = execFileSync('git', ['ls-files'], { cwd: TOP, encoding: 'utf8' }).split('\n');
    const top = new Set(tracked.filter(Boolean).map((path) => path.split('/')[0] ?? ''));
    const card = [
      'README.md',
      'DEVELOPERS.md',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'client',
      'server',
      'grammar',
      'test',
      'fixtures',
    ];
    expect([...top].filter((name) => !name.startsWith('.') && !card.includes(name))).toEqual([]);
    expect(readdirSync(TOP)).toEqual(expect.arrayContaining(['client', 'server', 'grammar', 'test', 'fixtures']));
  });
});

describe('a forbidden import', () => {
  const FORBIDDEN = [
    ['grammar', 'grammar/visit/forbidden.ts', "import '../../client/visit/chart/machine.ts';", 'TS6307'],
    ['client/diagnosis', 'client/diagnosis/forbidden.ts', "import '../visit/chart/machine.ts';", 'TS6307'],
    ['client/words', 'client/words/forbidden.ts', "import '../visit/chart/machine.ts';", 'TS6307'],
    ['server', 'server/forbidden.ts', "import '../client/visit/chart/machine.ts';", 'TS6307'],
    [
      'client/visit',
      'client/visit/forbidden.ts',
      "import { readFileSync } from 'node:fs';\nreadFileSync('x');",
      'TS2591',
    ],
    ['grammar', 'grammar/visit/forbidden-page.ts', 'export const title = document.title;', 'TS2584'],
  ] as const;

  let copy = '';
  let said = '';
  beforeAll(() => {
    copy = mkdtempSync(join(tmpdir(), 'readback-walls-'));
    for (const name of ['grammar', 'client', 'server', 'tsconfig.json', 'package.json']) {
      cpSync(join(TOP, name), join(copy, name), { recursive: true });
    }
    symlinkSync(join(TOP, 'node_modules'), join(copy, 'node_modules'));
    for (const [, file, text] of FORBIDDEN) writeFileSync(join(copy, file), `${text}\n`);
    const rooms = [...new Set(FORBIDDEN.map(([room]) => room))];
    const tsc = [join(TOP, 'node_modules/typescript/bin/tsc'), '-b', ...rooms];
    said = spawnSync(process.execPath, tsc, { cwd: copy, encoding: 'utf8' }).stdout;
  });
  afterAll(() => rmSync(copy, { recursive: true, force: true }));

  it.each(FORBIDDEN)('of %s does not compile', (_room, file, _text, code) => {
    expect(said.split('\n').filter((line) => line.startsWith(`${file}(`) && line.includes(code))).not.toEqual([]);
  });
});

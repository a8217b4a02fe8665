import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verifyFolder } from '../../server/heads/verify-all.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { makeKeptFolder } from './kept-folder.ts';

const scratch = scratchFolder();
const KEPT = join(scratch.path, 'kept');
let program: string;
beforeAll(async () => {
  program = buildServer();
  await makeKeptFolder(KEPT, { north: 20, south: 30 });
}, 120_000);
afterAll(() => scratch.remove());

let copies = 0;
/** A copy of the folder, changed. */
function changed(change: (folder: string) => void = () => undefined): string {
  copies += 1;
  const folder = join(scratch.path, `copy-${copies}`);
  cpSync(KEPT, folder, { recursive: true });
  change(folder);
  return folder;
}

/** Ended by force after a while, it has no code. */
function tool(name: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [program.replace('main.js', `tools/${name}.js`), ...args],
    {
      encoding: 'utf8',
      timeout: 20_000,
    },
  );
  return { code: status, out: stdout, err: stderr };
}
const oneSentence = (text: string) => {
  expect(text.trim().split('\n'), text).toHaveLength(1);
  expect(text).not.toMatch(/^\s+at /m);
};

/** The file says that a server writes it, and its log is gone: as after a kill and a deleted log. */
function withoutLog(folder: string): void {
  const database = new SQLite(join(folder, 'readback.sqlite'));
  database.pragma('user_version = 1002');
  database.close();
}

/** What stands in a folder, with the bytes of each by the system's own sum. */
const standing = (folder: string) =>
  readdirSync(folder).map((name) => execFileSync('sha256sum', [join(folder, name)], { encoding: 'utf8' }));

describe('verify writes nothing', { timeout: 60_000 }, () => {
  test('into a folder whose log is gone, and finds it gone again and again', async () => {
    const folder = changed(withoutLog);
    const before = standing(folder);
    for (let time = 0; time < 2; time += 1) {
      const { out } = tool('verify', '--data', folder);
      expect(out).toContain('without its log (-wal)');
      expect(standing(folder)).toEqual(before);
    }
    expect(tool('backup', '--data', folder, join(scratch.path, 'no-log')).err).toMatch(/without its log/);
    expect(standing(folder)).toEqual(before);
    expect(existsSync(join(scratch.path, 'no-log'))).toBe(false);
  });

  test('into one as a server left it', () => {
    const folder = changed();
    const before = standing(folder);
    expect(tool('verify', '--data', folder)).toMatchObject({ code: 0, err: '' });
    expect(standing(folder)).toEqual(before);
  });
});

describe('the number of the latest acknowledged event', { timeout: 60_000 }, () => {
  const HURT: Readonly<Record<string, readonly [(path: string) => void, RegExp]>> = {
    'is gone': [(path) => rmSync(path), /"acknowledged" is gone/],
    'is none': [(path) => writeFileSync(path, 'many'), /"acknowledged" holds no number/],
    'is emptied': [(path) => writeFileSync(path, ''), /"acknowledged" holds no number/],
    'is lowered': [
      (path) => writeFileSync(path, `${'7'.padStart(20, '0')}\n`),
      /"acknowledged" says 7, and the record went to 50/,
    ],
    'is raised': [
      (path) => writeFileSync(path, `${'57'.padStart(20, '0')}\n`),
      /7 events that were acknowledged are not here/,
    ],
  };
  test.each(Object.entries(HURT))('%s: verify tells it, and the server does not start', async (_, [hurt, sentence]) => {
    const folder = changed((path) => hurt(join(path, 'acknowledged')));
    const { findings } = await verifyFolder(folder, []);
    expect(findings.map((one) => one.sentence).join(' ')).toMatch(sentence);
    const started = spawnSync(process.execPath, [program], {
      env: { DATA_DIR: folder, PORT: '0' },
      encoding: 'utf8',
      timeout: 20_000,
    });
    expect(started.stderr).toMatch(sentence);
    expect(started.status).toBe(1);
    oneSentence(started.stderr);
  });
});

describe('what is no record, or cannot be written, ends in a sentence and leaves nothing', { timeout: 120_000 }, () => {
  test.each([
    [
      'a text',
      (path: string) => writeFileSync(path, 'something else altogether '.repeat(90)),
      /is not a Readback record/,
    ],
    ['nothing', (path: string) => writeFileSync(path, ''), /is damaged/],
    ['a part', (path: string) => truncateSync(path, 9000), /is damaged/],
  ] as const)('%s in the place of the record', (_, hurt, sentence) => {
    const folder = changed((path) => hurt(join(path, 'readback.sqlite')));
    const place = join(scratch.path, `place-${copies}`);
    const runs: readonly (readonly [string, ...string[]])[] = [
      ['verify', '--data', folder],
      ['backup', '--data', folder, join(place, 'copy')],
      ['restore', '--data', place, folder],
    ];
    for (const args of runs) {
      const { code, out, err } = tool(...args);
      // A backup is a copy of what is there: one of a part is made where it can be, and restoring it is refused.
      if (args[0] === 'backup' && code === 0) continue;
      expect(`${err}${out}`, args[0]).toMatch(sentence);
      expect([1, 2]).toContain(code);
      oneSentence(err);
      if (args[0] === 'restore') expect(existsSync(place)).toBe(false);
    }
  });

  test('a log of something else beside it', () => {
    const folder = changed((path) => writeFileSync(join(path, 'readback.sqlite-wal'), 'x'.repeat(9000)));
    const { code, err } = tool('verify', '--data', folder);
    expect([0, 1, 2]).toContain(code);
    expect(err).not.toMatch(/^\s+at /m);
  });

  test('a folder that cannot be made', () => {
    const copy = join(scratch.path, 'whole');
    expect(tool('backup', '--data', KEPT, copy).code).toBe(0);
    for (const { code, err } of [
      tool('restore', '--data', '/proc/readback', copy),
      tool('backup', '--data', KEPT, '/proc/readback/copy'),
      tool('backup', '--data', KEPT, join(copy, 'heads.jsonl')),
    ]) {
      expect(err).toMatch(/cannot be written/);
      expect(code).toBe(2);
      oneSentence(err);
    }
    const started = spawnSync(process.execPath, [program], {
      env: { DATA_DIR: '/proc/readback' },
      encoding: 'utf8',
      timeout: 20_000,
    });
    expect(started).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/The data folder \/proc\/readback cannot be written/),
    });
  });

  test('a folder that may only be read is backed up', () => {
    const folder = changed((path) => chmodSync(path, 0o555));
    const copy = join(scratch.path, 'of-read-only');
    expect(tool('backup', '--data', folder, copy)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Copied 50 events/),
    });
    chmodSync(folder, 0o755);
  });

  test('a backup into the data folder itself is refused', () => {
    const folder = changed((path) => mkdirSync(join(path, 'demo')));
    for (const copy of [folder, join(folder, 'monday'), join(folder, 'demo', 'x')]) {
      expect(tool('backup', '--data', folder, copy)).toMatchObject({
        code: 2,
        err: expect.stringMatching(/lies in the data folder/),
      });
    }
    expect(existsSync(join(folder, 'monday'))).toBe(false);
  });
});

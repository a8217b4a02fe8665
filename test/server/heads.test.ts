import { type ChildProcess, spawn } from 'node:child_process';
import {
  appendFileSync,
  copyFileSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { verifyFolder } from '../../server/heads/verify-all.ts';
import { openSqlitePeopleStore } from '../../server/people/sqlite-people-store.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { chainFor, RawClient, streamOf } from './running-app.ts';

const scratch = scratchFolder();
let program: string;
beforeAll(() => {
  program = buildServer();
}, 120_000);
afterAll(() => scratch.remove());

interface Started {
  readonly child: ChildProcess;
  readonly url: string;
  /** What it had printed when it was ready. */
  readonly out: string;
}

function spawned(folder: string, environment: Record<string, string> = {}): ChildProcess {
  const { PATH } = process.env;
  return spawn(process.execPath, [program], {
    env: { PATH, DATA_DIR: folder, PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/** The server as it runs, or the sentence with which it did not start. */
async function start(folder: string, environment?: Record<string, string>): Promise<Started | string> {
  const child = spawned(folder, environment);
  let [out, err] = ['', ''];
  child.stderr?.on('data', (text) => {
    err += text;
  });
  return new Promise((resolve) => {
    child.stdout?.on('data', (text) => {
      out += text;
      const line = out.split('\n').find((one) => one.startsWith('{"ready"'));
      if (line !== undefined) resolve({ child, url: JSON.parse(line).ready.url, out });
    });
    child.on('close', () => resolve(err));
  });
}

async function started(folder: string, environment?: Record<string, string>): Promise<Started> {
  const how = await start(folder, environment);
  if (typeof how === 'string') throw new Error(how);
  return how;
}

const ended = (child: ChildProcess, signal: 'SIGTERM' | 'SIGKILL') =>
  new Promise((resolve) => {
    child.on('close', resolve);
    child.kill(signal);
  });

/** A device writes so many events of a visit, and hears that they are kept. */
async function write(url: string, visit: string, count: number): Promise<void> {
  const client = await RawClient.open(url);
  const stream = streamOf(visit);
  await client.hello(stream);
  const bodies = Array.from({ length: count }, (_, index) => `{"type":"note.taken","text":"${index}"}`);
  for (const entry of await chainFor(stream, bodies)) client.say({ kind: 'append', ...entry });
  for (;;) {
    const message = await client.hear();
    if (message.kind === 'ack' && message.seq === count) break;
  }
  client.socket.close();
}

/** A folder in which a server kept two visits, and how it ended. */
async function kept(name: string, signal: 'SIGTERM' | 'SIGKILL'): Promise<string> {
  const folder = join(scratch.path, name);
  const { child, url } = await started(folder);
  await write(url, 'north', 20);
  await write(url, 'south', 30);
  await ended(child, signal);
  return folder;
}

const headsOf = (folder: string): SignedHead[] =>
  readFileSync(join(folder, 'heads.jsonl'), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));

describe('a server signs where all streams stand', { timeout: 60_000 }, () => {
  test('at its end, and gives it out; nothing is signed where nothing moved', async () => {
    const folder = await kept('signs', 'SIGTERM');
    const before = headsOf(folder);
    expect(before.at(-1)?.streams.map(({ stream, seq }) => [stream, seq])).toEqual([
      ['local/north/phone/1', 20],
      ['local/south/phone/1', 30],
    ]);
    const { child, url } = await started(folder);
    const { heads } = (await (await fetch(`${url}/api/heads`)).json()) as { heads: SignedHead[] };
    expect(heads).toEqual(before);
    await ended(child, 'SIGTERM');
    expect(headsOf(folder)).toEqual(before);
  });
});

/** Changes the tables, and leaves them with what forbids it as they were. */
function withoutGuards(folder: string, sql: string): void {
  const database = new SQLite(join(folder, 'readback.sqlite'));
  const guards = database
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all();
  for (const { name } of guards) database.exec(`DROP TRIGGER ${name}`);
  database.exec(sql);
  for (const guard of guards) database.exec(guard.sql);
  database.close();
}

/** What happens to a folder while no server runs, and what the next one says of it. */
const LOST: Readonly<Record<string, readonly [ended: 'SIGTERM' | 'SIGKILL', (folder: string) => void, RegExp]>> = {
  'the record is gone': [
    'SIGTERM',
    (folder) => rmSync(join(folder, 'readback.sqlite')),
    /lost what was signed for\. Visit north \(phone\): all its 20 events are missing\. Visit south/,
  ],
  'an older copy took its place': [
    'SIGTERM',
    (folder) => copyFileSync(join(folder, '..', 'older.sqlite'), join(folder, 'readback.sqlite')),
    /Visit south \(phone\): all its 30 events are missing/,
  ],
  'its log was deleted after a kill': [
    'SIGKILL',
    (folder) => rmSync(join(folder, 'readback.sqlite-wal')),
    /was copied while it was being written, without its log/,
  ],
  'its log was cut after a kill': [
    'SIGKILL',
    (folder) => truncateSync(join(folder, 'readback.sqlite-wal'), 40_000),
    / \d+ events that were acknowledged are not here/,
  ],
  'its key is another one': [
    'SIGTERM',
    (folder) => copyFileSync(join(folder, '..', 'older', 'receipt-key.pem'), join(folder, 'receipt-key.pem')),
    /is not the one that signed this record/,
  ],
  'its key is gone': [
    'SIGTERM',
    (folder) => rmSync(join(folder, 'receipt-key.pem')),
    /The key that signed the record in .* is gone/,
  ],
  'a head was changed': [
    'SIGTERM',
    (folder) => {
      const path = join(folder, 'heads.jsonl');
      writeFileSync(path, readFileSync(path, 'utf8').replace('"seq":30', '"seq":29'));
    },
    /Head 2 in .* does not bear the signature/,
  ],
  'the folder was emptied, and its key is still there': [
    'SIGTERM',
    (folder) => {
      for (const name of ['readback.sqlite', 'heads.jsonl', 'acknowledged']) rmSync(join(folder, name));
    },
    /is gone: readback\.sqlite, heads\.jsonl, acknowledged missing beside receipt-key\.pem/,
  ],
  'its heads are gone': [
    'SIGTERM',
    (folder) => rmSync(join(folder, 'heads.jsonl')),
    /The signed heads \(heads\.jsonl\) are gone/,
  ],
  'its heads were emptied': [
    'SIGTERM',
    (folder) => writeFileSync(join(folder, 'heads.jsonl'), ''),
    /The signed heads \(heads\.jsonl\) are gone/,
  ],
  'an event in the middle was deleted': [
    'SIGTERM',
    (folder) => withoutGuards(folder, 'DELETE FROM event WHERE stream = 1 AND seq = 7'),
    /is not as it was written\. north, phone: Event 7 is missing: event 8 stands in its place/,
  ],
  'an event in the middle was changed': [
    'SIGTERM',
    (folder) => withoutGuards(folder, "UPDATE event SET body = CAST('{}' AS BLOB) WHERE stream = 1 AND seq = 7"),
    /north, phone: Event 7 is not as it was written/,
  ],
  'two events in the middle changed places': [
    'SIGTERM',
    (folder) =>
      withoutGuards(
        folder,
        `UPDATE event SET body = (SELECT body FROM event AS other WHERE other.stream = 1 AND other.seq = 15 - event.seq)
         WHERE stream = 1 AND seq IN (7, 8)`,
      ),
    /north, phone: Event 7 is not as it was written/,
  ],
  'a line was added to the heads': [
    'SIGTERM',
    (folder) => appendFileSync(join(folder, 'heads.jsonl'), '{}\n'),
    /Head 3 in .* is not as it was signed/,
  ],
};

describe('a server that finds less than it signed for or acknowledged', { timeout: 60_000 }, () => {
  beforeAll(async () => {
    const folder = join(scratch.path, 'older');
    const { child, url } = await started(folder);
    await write(url, 'north', 20);
    await ended(child, 'SIGTERM');
    copyFileSync(join(folder, 'readback.sqlite'), join(scratch.path, 'older.sqlite'));
  }, 60_000);

  test.each(Object.entries(LOST))(
    'does not start where %s, in one sentence, and does with a word',
    async (name, row) => {
      const [signal, lose, sentence] = row;
      const folder = await kept(name.replaceAll(' ', '-'), signal);
      lose(folder);
      const before = readdirSync(folder).filter((file) => !/-(wal|shm)$/.test(file));
      // Said again as often as it is tried: a start that was refused made nothing that would hide it.
      for (let time = 0; time < 2; time += 1) {
        const refused = await start(folder);
        expect(refused).toMatch(sentence);
        expect(String(refused).trim().split('\n')).toHaveLength(1);
      }
      expect(before).toEqual(expect.arrayContaining(readdirSync(folder).filter((file) => !/-(wal|shm)$/.test(file))));
      const { child, url, out } = await started(folder, { ACCEPT_LOSS: 'yes' });
      expect(out).toMatch(/^Given up: ./m);
      // The device still holds what it wrote, and sends it again.
      await write(url, 'south', 30);
      await ended(child, 'SIGTERM');
      const again = await started(folder);
      await ended(again.child, 'SIGTERM');
    },
  );

  test('says what it gave up, and verify says it ever after', async () => {
    const folder = await kept('given-up', 'SIGTERM');
    copyFileSync(join(scratch.path, 'older.sqlite'), join(folder, 'readback.sqlite'));
    const { child, out } = await started(folder, { ACCEPT_LOSS: 'yes' });
    expect(out).toContain('Given up: Visit south (phone): all its 30 events are missing.\n');
    expect(out).toContain('Checked at this start: the chain of all 20 events\n');
    await ended(child, 'SIGTERM');
    const { findings, notes } = await verifyFolder(folder, []);
    expect(findings).toEqual([]);
    expect(notes.join('\n')).toMatch(
      /^at head 3 the heads began anew: given up were south, phone, 30 events of 30\.$/m,
    );
    expect(notes.join('\n')).toMatch(
      /^given up at a start on \d{4}-.*: Visit south \(phone\): all its 30 events are missing\.$/m,
    );
  });

  test('starts as before where it was killed and its log is whole', async () => {
    const folder = await kept('killed', 'SIGKILL');
    const { child } = await started(folder);
    await ended(child, 'SIGTERM');
    expect(headsOf(folder).at(-1)?.streams).toHaveLength(2);
  });
});

describe('one folder, one server', { timeout: 60_000 }, () => {
  test('a second server does not start there', async () => {
    const folder = join(scratch.path, 'shared');
    const first = await started(folder);
    expect(await start(folder)).toMatch(/^Another server keeps its record in /);
    await ended(first.child, 'SIGKILL');
    const second = await started(folder);
    await ended(second.child, 'SIGTERM');
  });
});

describe('backup and restore', { timeout: 120_000 }, () => {
  const tool = (name: string, ...args: string[]) =>
    new Promise<{ code: number | null; out: string; err: string }>((resolve) => {
      const child = spawn(process.execPath, [program.replace('main.js', `tools/${name}.js`), ...args]);
      let [out, err] = ['', ''];
      child.stdout.on('data', (text) => {
        out += text;
      });
      child.stderr.on('data', (text) => {
        err += text;
      });
      child.on('close', (code) => resolve({ code, out, err }));
    });

  test('a copy made while devices write is whole, verifies, and starts in another place', async () => {
    const folder = join(scratch.path, 'busy');
    const { child, url } = await started(folder);
    await write(url, 'before', 50);
    const writing = Promise.all(Array.from({ length: 8 }, (_, index) => write(url, `during-${index}`, 200)));
    const copy = join(scratch.path, 'busy-copy');
    const made = await tool('backup', '--data', folder, copy);
    expect(made).toMatchObject({ code: 0, err: '' });
    await writing;
    await ended(child, 'SIGTERM');
    const verified = await tool('verify', '--data', copy);
    expect(verified.out).toMatch(/^Nothing speaks against \d+ events/);
    const place = join(scratch.path, 'restored');
    expect(await tool('restore', '--data', place, copy)).toMatchObject({ code: 0, err: '' });
    const restored = await started(place);
    // A device that wrote since the backup sends what the copy lacks.
    await write(restored.url, 'during-0', 200);
    await ended(restored.child, 'SIGTERM');
    expect((await tool('verify', '--data', place, '--heads', join(copy, 'heads.jsonl'))).code).toBe(0);
  });

  test('a copy takes people and devices along, while the server goes on', async () => {
    const folder = join(scratch.path, 'peopled');
    const { child, url } = await started(folder);
    await write(url, 'north', 5);
    expect(await tool('keeper', '--data', folder, 'robin')).toMatchObject({ code: 0, err: '' });
    const [copy, place] = [join(scratch.path, 'peopled-copy'), join(scratch.path, 'peopled-again')];
    expect(await tool('backup', '--data', folder, copy)).toMatchObject({ code: 0, err: '' });
    await ended(child, 'SIGTERM');
    expect(await tool('restore', '--data', place, copy)).toMatchObject({ code: 0, err: '' });
    const people = await openSqlitePeopleStore(join(place, 'people.sqlite'));
    expect(await people.people('local')).toMatchObject([{ login: 'robin', role: 'keeper' }]);
    await people.close();
  });

  test('a file copied while it was written, without its log, is refused with what to do', async () => {
    const folder = join(scratch.path, 'live');
    const { child, url } = await started(folder);
    await write(url, 'north', 20);
    const copy = join(scratch.path, 'half');
    mkdirSync(copy);
    cpSync(join(folder, 'readback.sqlite'), join(copy, 'readback.sqlite'));
    await ended(child, 'SIGTERM');
    expect(await start(copy)).toMatch(/copy it with "npm run backup"/);
    const restored = await tool('restore', '--data', join(scratch.path, 'none'), copy);
    expect(restored).toMatchObject({ code: 2, out: '' });
    expect(restored.err).toMatch(/copy it with "npm run backup"/);
  });

  test('nothing is written over', async () => {
    const folder = await kept('full', 'SIGTERM');
    expect((await tool('backup', '--data', folder, join(folder, '..'))).err).toMatch(/is not empty/);
    const copy = join(scratch.path, 'full-copy');
    expect((await tool('backup', '--data', folder, copy)).code).toBe(0);
    expect((await tool('restore', '--data', folder, copy)).err).toMatch(/holds a record: move it away first/);
  });
});

describe('verify', { timeout: 60_000 }, () => {
  test('reads a running server, and tells a record of a device that holds more', async () => {
    const folder = join(scratch.path, 'served');
    const { child, url } = await started(folder);
    await write(url, 'north', 20);
    const entries = await chainFor(
      streamOf('north'),
      Array.from({ length: 42 }, (_, index) => `{"type":"note.taken","text":"${index}"}`),
    );
    const file = join(scratch.path, 'north.jsonl');
    const last = entries.at(-1);
    const lines = [
      { kind: 'stream', version: 1, stream: streamOf('north') },
      { kind: 'batch', entries },
      { kind: 'acknowledged', seq: last?.seq, hash: last?.hash },
    ];
    writeFileSync(file, lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
    const run = (...args: string[]) =>
      new Promise<string>((resolve) => {
        const tool = spawn(process.execPath, [program.replace('main.js', 'tools/verify.js'), ...args]);
        let out = '';
        tool.stdout.on('data', (text) => {
          out += text;
        });
        tool.on('close', (code) => resolve(`${code} ${out}`));
      });
    expect(await run('--server', url)).toMatch(/^0 Nothing speaks against 20 events in 1 stream\./);
    expect(await run('--server', url, file)).toMatch(
      /^1 20 events in 1 stream; 2 not as it was:\nnorth, phone: No receipt is kept for event 42: .*\nnorth, phone: Not complete: 20 held here, and the device was told that 42 were\./,
    );
    await ended(child, 'SIGTERM');
  });
});

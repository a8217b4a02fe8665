import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, describe, expect, test } from 'vitest';
import { sha256 } from '../../client/record/node/sha256.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';
import { checkVisit } from '../../server/review/check-visit.ts';
import { demandDurability } from '../../server/store/sqlite-schema.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { scratchFolder } from './built-server.ts';
import { chainFor, streamOf } from './running-app.ts';

const scratch = scratchFolder();
afterAll(() => scratch.remove());
const stream = streamOf('v-sqlite');

/** A closed record of twenty events under the name. */
async function recordFile(name: string): Promise<string> {
  const path = join(scratch.path, name);
  const store = openSqliteStore(path);
  const chain = await chainFor(
    stream,
    Array.from({ length: 20 }, (_, at) => `{"reading":${at},"mark":"needle-${at};"}`),
  );
  await store.commit(chain.map((entry) => ({ ...entry, stream, receivedAt: 1 })));
  await store.close();
  return path;
}

describe('a record in SQLite is on the disk when it says so', () => {
  test('a WAL file that is opened again falls to NORMAL, and is set to FULL and read back', async () => {
    const path = await recordFile('durable.sqlite');
    const database = new SQLite(path);
    const synchronous = () => database.pragma('synchronous', { simple: true });
    expect(synchronous()).toBe(1);
    demandDurability(database, path);
    expect(synchronous()).toBe(2);
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    database.close();
  });

  test('a database that cannot keep a write-ahead log is refused', () => {
    const inMemory = new SQLite(':memory:');
    expect(() => demandDurability(inMemory, ':memory:')).toThrow(/does not keep what is written/);
    inMemory.close();
  });
});

describe('a record in SQLite only grows', () => {
  test.each([
    ['UPDATE', "UPDATE event SET body = x'00' WHERE seq = 3"],
    ['UPDATE of nothing but the time', 'UPDATE event SET received_at = 0'],
    ['DELETE', 'DELETE FROM event WHERE seq = 20'],
    ['DELETE of all', 'DELETE FROM event'],
    ['REPLACE by number', "REPLACE INTO event (stream, seq, hash, body, received_at) VALUES (1, 3, 'h', x'00', 0)"],
    [
      'REPLACE by arrival',
      "INSERT OR REPLACE INTO event (arrival, stream, seq, hash, body, received_at) VALUES (3, 1, 99, 'h', x'00', 0)",
    ],
    [
      'upsert',
      "INSERT INTO event (stream, seq, hash, body, received_at) VALUES (1, 3, 'h', x'00', 0) ON CONFLICT DO UPDATE SET body = x'00'",
    ],
    ['UPDATE OR REPLACE', 'UPDATE OR REPLACE event SET seq = 1 WHERE seq = 2'],
    ['UPDATE of a stream', "UPDATE stream SET visit = 'other'"],
    ['REPLACE of a stream', "REPLACE INTO stream (id, company, visit, device, epoch) VALUES (1, 'c', 'v', 'd', 1)"],
    ['DELETE of a stream', 'DELETE FROM stream'],
  ])('%s is refused', async (what, sql) => {
    const path = await recordFile(`grow-${what.replaceAll(' ', '-')}.sqlite`);
    const database = new SQLite(path);
    const all = () => [database.prepare('SELECT * FROM event').all(), database.prepare('SELECT * FROM stream').all()];
    const before = all();
    expect(() => database.exec(sql)).toThrow(/a record is never (changed|deleted|replaced)/);
    expect(all()).toEqual(before);
    database.close();
  });
});

describe('a record in SQLite that is not as it was', () => {
  test('a bit flipped in the file is found, and its event named', async () => {
    const path = await recordFile('flipped.sqlite');
    const bytes = readFileSync(path);
    for (const target of [1, 7, 19]) {
      const flipped = Buffer.from(bytes);
      flipped[flipped.indexOf(`needle-${target};`) + 3]! ^= 0x02;
      writeFileSync(path, flipped);
      const store = openSqliteStore(path);
      const found = { intact: false, seq: target + 1, reason: 'altered' };
      const events = await store.events('local', stream.visit, { after: 0, limit: 100 });
      expect(await verifyChain(stream, events, sha256)).toMatchObject(found);
      const { findings } = await checkVisit(store, 'local', stream.visit, []);
      expect(findings).toMatchObject([{ seq: target + 1, sentence: expect.stringMatching(/not as it was written/) }]);
      await store.close();
    }
  });

  test('a record of the version before this one opens, and what is in it stays', async () => {
    const path = await recordFile('older.sqlite');
    const older = new SQLite(path);
    // What version 1 of the tables had not.
    older.exec('DROP TABLE said');
    older.pragma('user_version = 1');
    const before = older.prepare('SELECT * FROM event ORDER BY arrival').all();
    older.close();
    const store = openSqliteStore(path);
    const [visit] = await store.visits('local', { limit: 1, offset: 0 });
    expect(visit?.events).toBe(before.length);
    await store.note([{ stream: streamOf('said-later'), head: { seq: 2, hash: 'ab'.repeat(32) }, saidAt: 1 }]);
    await store.close();
    const after = new SQLite(path, { readonly: true });
    expect(after.prepare('SELECT * FROM event ORDER BY arrival').all()).toEqual(before);
    expect(after.pragma('user_version', { simple: true })).toBe(2);
    after.close();
  });

  test('tables that something was done to are not written to: what is acknowledged might not be kept', async () => {
    for (const sql of [
      'CREATE TRIGGER swallow BEFORE INSERT ON event BEGIN SELECT RAISE(IGNORE); END',
      'DROP TRIGGER event_no_delete',
      'CREATE TABLE more (name TEXT)',
    ]) {
      const path = await recordFile('changed.sqlite');
      const database = new SQLite(path);
      database.exec(sql);
      database.close();
      expect(() => openSqliteStore(path), sql).toThrow(/tables of the record .* are not as they were made/);
      rmSync(path);
    }
  });

  test('a file that is no database, one of another program, a newer one, a torn one: each has its own sentence', async () => {
    const path = join(scratch.path, 'wrong.sqlite');
    const opening = (change: () => void) => {
      change();
      return () => openSqliteStore(path);
    };
    expect(
      opening(() => writeFileSync(path, 'not a database, but long enough to be taken for a header of one'.repeat(9))),
    ).toThrow(/is not a Readback record/);
    const foreign = join(scratch.path, 'foreign.sqlite');
    const database = new SQLite(foreign);
    database.exec('CREATE TABLE recipe (name TEXT)');
    database.close();
    expect(() => openSqliteStore(foreign)).toThrow(/is not a Readback record/);

    const newer = await recordFile('newer.sqlite');
    const change = new SQLite(newer);
    change.pragma('user_version = 99');
    change.close();
    expect(() => openSqliteStore(newer)).toThrow(/newer version: update Readback/);

    const torn = await recordFile('torn.sqlite');
    const bytes = readFileSync(torn);
    writeFileSync(torn, Buffer.concat([bytes.subarray(0, 4096), Buffer.alloc(8192, 7), bytes.subarray(12_288)]));
    expect(() => openSqliteStore(torn)).toThrow(/is damaged: keep the file/);

    mkdirSync(join(scratch.path, 'folder.sqlite'));
    expect(() => openSqliteStore(join(scratch.path, 'folder.sqlite'))).toThrow(/cannot be written/);
  });
});

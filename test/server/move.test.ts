import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bringUpToDate } from '../../server/database/migrations.ts';
import { moveFolder } from '../../server/database/move-folder.ts';
import { openPostgres } from '../../server/database/open-postgres.ts';
import { backUpFolder } from '../../server/heads/copy-folder.ts';
import { openDatabase } from '../../server/heads/open-database.ts';
import { openFolder } from '../../server/heads/open-folder.ts';
import type { Person } from '../../server/people/people-store.ts';
import { openSqlitePeopleStore } from '../../server/people/sqlite-people-store.ts';
import { openSqlitePersonalStore, PERSONAL_FILE } from '../../server/personal/sqlite-personal-store.ts';
import { buildRoom, scratchFolder } from './built-server.ts';
import { Guest, withKeepers } from './guest.ts';
import { writeOlderPersonal } from './older-personal.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from './own-postgres.ts';
import { chainFor, runApp, streamOf } from './running-app.ts';

const programs = await postgresPrograms();
const missing = 'missing' in programs ? programs.missing : undefined;
const WHOLE = { after: 0, limit: 10_000 };
/** What bytes may be in a body. */
const PHOTO = { company: 'local', visit: 'visit-1', device: 'phone', sha256: 'cd'.repeat(32) };
const BODIES = ['', '\u0000', '½ 冷媒 🔧 \ufeff', "'; DROP TABLE event; --", '\\x00', 'x'.repeat(40_000)];

describe.skipIf(missing !== undefined)(`moving to PostgreSQL${missing === undefined ? '' : `: ${missing}`}`, () => {
  let postgres: OwnPostgres;
  const scratch = scratchFolder();
  const folder = join(scratch.path, 'data');
  let keeper: Guest;
  beforeAll(async () => {
    postgres = await startOwnPostgres(programs);
    await fill();
  });
  afterAll(async () => {
    await postgres?.remove();
    scratch.remove();
  });

  /** Two companies, visits with forks, epochs and a device that said more; people, a device, a session, a trail. */
  async function fill(): Promise<void> {
    mkdirSync(folder);
    const { store, keeper: heads, letGo } = await openFolder(folder, { acceptLoss: false });
    for (const company of ['local', 'north']) {
      for (let at = 0; at < 40; at += 1) {
        const stream = { ...streamOf(`visit-${at}`), company };
        const entries = await chainFor(stream, [...BODIES, `${at}`]);
        await store.commit(
          entries.map((entry, n) => ({ ...entry, stream, receivedAt: 1_000 + n, clockOffsetMs: -at })),
        );
      }
    }
    const forked = streamOf('visit-3');
    const [other] = await chainFor(forked, ['another first event']);
    await store.commit([{ ...other!, stream: forked, receivedAt: 5_000 }]);
    const end = (await chainFor(streamOf('visit-4'), [...BODIES, '4'])).at(-1)!;
    const later = { ...streamOf('visit-4'), epoch: 2 };
    await store.open(later, { epoch: 1, head: { seq: end.seq, hash: end.hash } });
    const [next] = await chainFor(later, ['goes on']);
    await store.commit([{ ...next!, stream: later, receivedAt: 6_000 }]);
    await store.note([{ stream: streamOf('awaited'), head: { seq: 9, hash: 'ab'.repeat(32) }, saidAt: 7_000 }]);
    await heads.close();
    await store.close();
    letGo();
    const { store: people, codes } = await withKeepers(['local', 'north'], Date.now, join(folder, 'people.sqlite'));
    const app = await runApp({ peopleStore: people });
    keeper = await new Guest(app).comeIn(codes[0] as string);
    await keeper.ask('POST', '/api/me/password', { password: 'six brown compressors' });
    await keeper.pair(keeper, 'tablet');
    // Named before a name had to be one line.
    const [someone] = await people.people('north');
    await people.changePerson('north', someone!.person, { name: 'Ann\u0000Other' });
    await app.stop();
    const personal = await openSqlitePersonalStore(join(folder, PERSONAL_FILE));
    const key = {
      company: 'local',
      device: 'phone',
      key: new Uint8Array(32).fill(7),
      createdAt: 1,
      erasedAt: undefined,
    };
    for (const visit of ['visit-1', 'visit-2']) await personal.addKey({ ...key, visit });
    await personal.beginAttachment({ ...PHOTO, kind: 'photo', media: 'image/jpeg', bytes: 5 });
    await personal.addPart(PHOTO, 0, new Uint8Array([0, 92, 255, 39, 10]));
    await personal.endAttachment(PHOTO, 9);
    await personal.eraseVisit('local', 'visit-2', ['phone'], 8);
    await personal.close();
  }

  test('takes all over, byte for byte; a server there goes on where the one here ended', async () => {
    const url = await postgres.database();
    const moved = await moveFolder(folder, url);
    expect(moved).toMatchObject({ streams: 81, events: 2 * 40 * 7 + 1, people: 2, devices: 1, before: false });
    const here = await openFolder(folder, { acceptLoss: false });
    const peopleHere = await openSqlitePeopleStore(join(folder, 'people.sqlite'));
    const there = await openDatabase(url, { acceptLoss: false });
    expect(there.signer.publicKey).toBe(here.signer.publicKey);
    const personalHere = await openSqlitePersonalStore(join(folder, PERSONAL_FILE));
    for (const visit of ['visit-1', 'visit-2']) {
      expect(await there.personalStore.keys('local', visit)).toEqual(await personalHere.keys('local', visit));
    }
    expect(await there.personalStore.attachment(PHOTO)).toEqual(await personalHere.attachment(PHOTO));
    expect([...(await there.personalStore.data(PHOTO))]).toEqual([0, 92, 255, 39, 10]);
    const late = { company: 'local', visit: 'visit-2', device: 'tablet', key: new Uint8Array(32), createdAt: 10 };
    expect(await there.personalStore.addKey({ ...late, erasedAt: undefined })).toBe('erased');
    await personalHere.close();
    expect(there.keeper.heads()).toEqual(here.keeper.heads());
    expect(await there.store.ends()).toEqual(await here.store.ends());
    for (const company of ['local', 'north']) {
      for (let at = 0; at < 40; at += 1) {
        const read = [company, `visit-${at}`, WHOLE] as const;
        expect(await there.store.events(...read)).toEqual(await here.store.events(...read));
        expect(await there.store.streams(company, `visit-${at}`)).toEqual(
          await here.store.streams(company, `visit-${at}`),
        );
      }
      const withoutNul = ({ name, ...of }: Person) => ({ ...of, name: name.replaceAll('\u0000', '\ufffd') });
      expect(await there.peopleStore.people(company)).toEqual((await peopleHere.people(company)).map(withoutNul));
      expect(await there.peopleStore.devices(company)).toEqual(await peopleHere.devices(company));
      const lines = await peopleHere.audit(company, { limit: 1_000 });
      expect(lines.length).toBeGreaterThan(1);
      expect(await there.peopleStore.audit(company, { limit: 1_000 })).toEqual(lines);
    }
    expect(await there.store.streams('local', 'awaited')).toMatchObject([{ said: 9 }]);
    await here.keeper.close();
    await here.store.close();
    await peopleHere.close();
    here.letGo();
    // Who was signed in still is; who writes goes on, and what is new is numbered behind what was there.
    const app = await runApp({ ...there });
    const again = new Guest(app);
    for (const [name, value] of keeper.cookies) again.cookies.set(name, value);
    expect((await again.ask('GET', '/api/who')).json.person.login).toBe('local-keeper');
    const before = await there.store.lastArrival();
    const stream = streamOf('visit-0');
    const entries = await chainFor(stream, [...BODIES, '0', 'after the move']);
    const outcomes = await there.store.commit(
      entries.slice(-2).map((entry) => ({ ...entry, stream, receivedAt: 9_000 })),
    );
    expect(outcomes).toEqual([{ kind: 'duplicate' }, { kind: 'stored' }]);
    expect(await there.store.lastArrival()).toBe(before + 1);
    expect((await again.ask('POST', '/api/people', { login: 'new', name: 'New', role: 'technician' })).status).toBe(
      201,
    );
    await app.stop();
  });

  test('takes over, and backs up, what an older version kept of a visit: each file of the device that sent it', async () => {
    const [older, copy] = [join(scratch.path, 'older'), join(scratch.path, 'older-copy')];
    const { store, keeper: heads, letGo } = await openFolder(older, { acceptLoss: false });
    const stream = streamOf('visit-1');
    await store.commit((await chainFor(stream, ['one'])).map((entry) => ({ ...entry, stream, receivedAt: 1 })));
    await heads.close();
    await store.close();
    letGo();
    const name = `'local', 'visit-1', '${PHOTO.sha256}'`;
    await writeOlderPersonal(
      join(older, PERSONAL_FILE),
      `INSERT INTO attachment VALUES (${name}, 'phone', 'photo', 'image/jpeg', 3, 3, 9, NULL);
      INSERT INTO attachment_part VALUES (${name}, 0, x'0a00ff')`,
    );
    const people = join(older, 'people.sqlite');
    await (await openSqlitePeopleStore(people)).close();
    const before = new SQLite(people);
    before.exec(
      "DROP TABLE lease_step; INSERT INTO lease VALUES ('local', 'visit-1', 'tablet', '', 5); PRAGMA user_version = 2",
    );
    before.close();
    await backUpFolder(older, copy);
    const url = await postgres.database();
    await moveFolder(older, url);
    // The folder stays as it was, for the server that kept it.
    for (const [name, version] of [
      ['people.sqlite', 2],
      [PERSONAL_FILE, 1],
    ] as const) {
      const left = new SQLite(join(older, name), { readonly: true });
      expect(left.pragma('user_version', { simple: true })).toBe(version);
      left.close();
    }
    const there = await openDatabase(url, { acceptLoss: false });
    const restored = await openSqlitePersonalStore(join(copy, PERSONAL_FILE));
    expect(await there.peopleStore.olderLease('local', 'visit-1')).toBe('tablet');
    for (const personal of [there.personalStore, restored]) {
      expect(await personal.attachment(PHOTO)).toMatchObject({ device: 'phone', held: 3, receivedAt: 9 });
      expect([...(await personal.data(PHOTO))]).toEqual([10, 0, 255]);
    }
    await restored.close();
    await there.peers.close();
    await there.keeper.close();
    await there.store.close();
  });

  test('run again where it was done, it says so; a database that holds anything else is refused', async () => {
    const url = await postgres.database();
    await moveFolder(folder, url);
    expect(await moveFolder(folder, url)).toMatchObject({ before: true, streams: 81 });
    const { store, keeper: heads, peers } = await openDatabase(url, { acceptLoss: false });
    const stream = streamOf('since');
    await store.commit((await chainFor(stream, ['x'])).map((entry) => ({ ...entry, stream, receivedAt: 1 })));
    await peers.close();
    await heads.close();
    await store.close();
    await expect(moveFolder(folder, url)).rejects.toThrow(/holds a record already: name an empty one\.$/);
    const used = await postgres.database();
    const other = await openDatabase(used, { acceptLoss: false });
    await other.peers.close();
    await other.store.close();
    await expect(moveFolder(folder, used)).rejects.toThrow(/holds a record already/);
  });

  test('a connection that breaks in the middle leaves nothing; it is run again', async () => {
    const url = await postgres.database();
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    // The tables are there, and cut the connection at the last event.
    await expect(moveFolder(join(scratch.path, 'none'), url)).rejects.toThrow(/There is no record in/);
    const database = await openPostgres(url);
    await bringUpToDate(database);
    await database.close();
    await client.query(`CREATE FUNCTION cut() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
      PERFORM pg_terminate_backend(pg_backend_pid()); RETURN NEW; END $$`);
    await client.query(
      'CREATE TRIGGER cut BEFORE INSERT ON event FOR EACH ROW WHEN (NEW.arrival = 555) EXECUTE FUNCTION cut()',
    );
    await expect(moveFolder(folder, url)).rejects.toThrow();
    expect((await client.query('SELECT FROM event')).rowCount).toBe(0);
    expect((await client.query('SELECT FROM stream')).rowCount).toBe(0);
    await client.query('DROP TRIGGER cut ON event');
    expect(await moveFolder(folder, url)).toMatchObject({ streams: 81, before: false });
    await client.end();
  });

  test('what is not copied as it was is noticed, and nothing counts', async () => {
    const url = await postgres.database();
    const database = await openPostgres(url);
    await bringUpToDate(database);
    for (const [table, change] of [
      ['event', "NEW.body = 'other'"],
      ['event', 'NEW.received_at = NEW.received_at + 1'],
      ['said', 'NEW.said_at = 1'],
      ['audit', "NEW.detail = 'other'"],
    ]) {
      await database.pool.query(`CREATE OR REPLACE FUNCTION twist() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
        ${change}; RETURN NEW; END $$`);
      await database.pool.query(`CREATE TRIGGER twist BEFORE INSERT ON ${table} FOR EACH ROW EXECUTE FUNCTION twist()`);
      await expect(moveFolder(folder, url), change).rejects.toThrow(
        new RegExp(`its table ${table}.*nothing was moved`),
      );
      await database.pool.query(`DROP TRIGGER twist ON ${table}`);
    }
    expect((await database.pool.query('SELECT FROM event')).rowCount).toBe(0);
    await database.close();
  });

  test('as a tool: what it moved, in one line; a wrong use in one line', async () => {
    const tool = buildRoom('server', 'tools/move.js');
    const run = (...args: string[]) => spawnSync(process.execPath, [tool, ...args], { encoding: 'utf8' });
    const url = await postgres.database();
    const { stdout, status } = run('--data', folder, '--to', url);
    expect(stdout).toMatch(
      /^Moved 561 events in 81 streams, 2 people, 1 device, \d heads from \S+ to 127\.0\.0\.1:\d+\/readback_\d+, and held against it: nothing differs\./,
    );
    expect(status).toBe(0);
    expect(run('--data', folder).stderr).toBe('Name the database by --to: see "npm run -s move -- --help".\n');
    expect(run('--to', 'http://x').stderr).toMatch(/^DATABASE_URL must be an address such as [^\n]+\n$/);
    expect(run('--help').stdout).toContain('Usage: npm run -s move');
    // The same verdict by the same heads, there as here.
    const verify = (...args: string[]) =>
      spawnSync(process.execPath, [buildRoom('server', 'tools/verify.js'), ...args], { encoding: 'utf8' });
    const [here, there] = [verify('--data', folder), verify('--database', url)];
    expect(here.stdout).toMatch(/^561 events in 82 streams; 2 not as it was:\n/);
    expect([there.stdout, there.stderr, there.status]).toEqual([here.stdout, '', 1]);
    // Who keeps the database lets themselves in.
    const keeperTool = buildRoom('server', 'tools/keeper.js');
    const env = { ...process.env, DATABASE_URL: url };
    const added = spawnSync(process.execPath, [keeperTool, 'robin'], { encoding: 'utf8', env });
    expect(added.stdout).toMatch(/^robin is a keeper of local\. Good once, within a day: http:\S+\n$/);
    const { peopleStore, store, peers } = await openDatabase(url, { acceptLoss: false });
    expect((await peopleStore.personByLogin('robin'))?.role).toBe('keeper');
    await peers.close();
    await store.close();
    expect(readFileSync(join(folder, 'heads.jsonl'), 'utf8').length).toBeGreaterThan(0);
  });
});

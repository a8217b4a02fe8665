import { randomBytes } from 'node:crypto';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { bringUpToDate } from '../../server/database/migrations.ts';
import { openPostgres, type PostgresDatabase } from '../../server/database/open-postgres.ts';
import type { PeopleStore } from '../../server/people/people-store.ts';
import { sqlPeopleStore } from '../../server/people/sql-people-store.ts';
import type { PersonalStore } from '../../server/personal/personal-store.ts';
import { postgresPersonalStore } from '../../server/personal/postgres-personal-store.ts';
import { openPostgresStore, type PostgresStore } from '../../server/store/postgres-store.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from '../server/own-postgres.ts';
import { peopleContract } from './people-contract.ts';
import { personalContract } from './personal-contract.ts';
import { storeContract } from './store-contract.ts';

const programs = await postgresPrograms();
const missing = 'missing' in programs ? programs.missing : undefined;
const named = missing === undefined ? 'PostgreSQL' : `PostgreSQL: ${missing}`;

describe.skipIf(missing !== undefined)(named, () => {
  let server: OwnPostgres;
  let url: string;
  let database: PostgresDatabase;
  let store: PostgresStore;
  let people: PeopleStore;
  let personal: PersonalStore;

  const open = async () => {
    database = await openPostgres(url);
    await bringUpToDate(database);
    store = await openPostgresStore(database);
    people = sqlPeopleStore(database.db, async () => undefined);
    personal = postgresPersonalStore(database);
  };
  const reopen = async () => {
    await database.close();
    await open();
  };

  beforeAll(async () => {
    server = await startOwnPostgres(programs);
    url = await server.database();
    await open();
  });
  afterAll(async () => {
    await database?.close();
    await server?.remove();
  });

  storeContract(named, () => store, reopen);
  peopleContract(named, () => people, reopen);
  personalContract(named, () => personal, reopen);

  describe('what was erased of a visit', () => {
    let url: string;
    let own: PostgresDatabase;
    let keys: readonly Buffer[];
    const DEVICES = ['one', 'two', 'three', 'four', 'five', 'six'];
    beforeEach(async () => {
      url = await server.database();
      own = await openPostgres(url);
      await bringUpToDate(own);
      keys = DEVICES.map(() => randomBytes(32));
      const store = postgresPersonalStore(own);
      const row = { company: 'c', createdAt: 1, erasedAt: undefined };
      await store.addKey({ ...row, visit: 'kept', device: 'phone', key: randomBytes(32) });
      for (const [at, key] of keys.entries())
        await store.addKey({ ...row, visit: 'v', device: DEVICES[at] ?? '', key });
    });
    afterEach(() => own.close());

    /** How many of the keys lie in the file of their table, as PostgreSQL itself reads it from the disk. */
    async function inFile(): Promise<number> {
      await own.pool.query('CHECKPOINT');
      const read = "SELECT pg_read_binary_file(pg_relation_filepath('visit_key')) AS file";
      const file = (await own.pool.query<{ readonly file: Buffer }>(read)).rows[0]?.file;
      return keys.filter((key) => file?.includes(key)).length;
    }

    test('lies in the file of its table until that is written anew; a plain VACUUM leaves it there', async () => {
      const store = postgresPersonalStore(own);
      expect(await inFile()).toBe(DEVICES.length);
      expect(await store.eraseVisit('c', 'v', DEVICES, 2)).toEqual({ keys: DEVICES.length, files: 0 });
      await own.pool.query('VACUUM visit_key');
      expect(await inFile()).toBeGreaterThan(0);
      expect(await store.overwriteErased()).toEqual([]);
      expect(await inFile()).toBe(0);
      expect(await store.keys('c', 'kept')).toHaveLength(1);
    });

    test('is said to be there where this role may not have it written anew', async () => {
      await own.pool.query(`CREATE ROLE clerk LOGIN; GRANT USAGE ON SCHEMA public TO clerk;
        GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO clerk`);
      const clerk = await openPostgres(url.replace('readback@', 'clerk@'));
      const store = postgresPersonalStore(clerk);
      await store.eraseVisit('c', 'v', DEVICES, 2);
      const left = await store.overwriteErased();
      expect(left[0]).toMatch(
        /^PostgreSQL says: permission denied to vacuum "visit_key".* until its owner runs VACUUM FULL\.$/,
      );
      expect(await inFile()).toBe(DEVICES.length);
      await clerk.close();
    });

    test('is said to be there while an older transaction could read it, and goes at the next', async () => {
      const reader = await own.connect('a dump');
      await reader.query('BEGIN ISOLATION LEVEL REPEATABLE READ; SELECT 1 FROM stream');
      const store = postgresPersonalStore(own);
      await store.eraseVisit('c', 'v', DEVICES, 2);
      expect((await store.overwriteErased())[0]).toMatch(/^An older transaction still sees 6 rows /);
      expect(await inFile()).toBe(DEVICES.length);
      await reader.query('COMMIT');
      await reader.end();
      expect(await store.overwriteErased()).toEqual([]);
      expect(await inFile()).toBe(0);
    });
  });

  test('files of an older version are each of the device that sent them', async () => {
    const own = await openPostgres(await server.database());
    await bringUpToDate(own, '0004-personal');
    await own.pool.query(`
      INSERT INTO attachment VALUES ('c', 'v', 'aa', 'phone', 'sound', 'audio/wav', 5, 5, 6, NULL),
        ('c', 'v', 'bb', 'tablet', 'photo', 'image/png', 9, 1, NULL, NULL);
      INSERT INTO attachment_part VALUES ('c', 'v', 'aa', 0, '\\xff00'), ('c', 'v', 'aa', 2, '\\x010203'), ('c', 'v', 'bb', 0, '\\x07')`);
    expect(await bringUpToDate(own)).toBe('older');
    const store = postgresPersonalStore(own);
    const name = { company: 'c', visit: 'v', sha256: 'aa', device: 'phone' };
    expect(await store.attachment(name)).toMatchObject({ bytes: 5, held: 5, receivedAt: 6 });
    expect([...(await store.data(name))]).toEqual([255, 0, 1, 2, 3]);
    expect(await store.attachment({ ...name, device: 'tablet' })).toBeUndefined();
    expect([...(await store.data({ ...name, sha256: 'bb', device: 'tablet' }))]).toEqual([7]);
    await own.close();
  });
});

import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PeopleStore } from '../../server/people/people-store.ts';
import { openSqlitePeopleStore } from '../../server/people/sqlite-people-store.ts';
import { scratchFolder } from '../server/built-server.ts';
import { peopleContract } from './people-contract.ts';

const scratch = scratchFolder();
const path = join(scratch.path, 'people.sqlite');
let store: PeopleStore;
beforeAll(async () => {
  store = await openSqlitePeopleStore(path);
});
afterAll(async () => {
  await store.close();
  scratch.remove();
});

peopleContract(
  'SQLite',
  () => store,
  async () => {
    await store.close();
    store = await openSqlitePeopleStore(path);
  },
);

describe('SQLite: the file of the people', () => {
  const change = (file: string, sql: string) => {
    const database = new SQLite(file);
    try {
      database.exec(sql);
    } finally {
      database.close();
    }
  };

  test('nothing in the trail is changed or taken out, by whatever program', async () => {
    await store.note({
      at: 1,
      company: 'c',
      person: 'p',
      device: '',
      deed: 'd',
      outcome: 'done',
      detail: '',
      times: 1,
    });
    expect(() => change(path, "UPDATE audit SET deed = 'x'")).toThrow('what is kept is never changed');
    expect(() => change(path, 'DELETE FROM audit')).toThrow('what is kept is never changed');
    expect(() => change(path, "INSERT OR REPLACE INTO audit VALUES (1, 2, '', '', '', '', '', '', 1)")).toThrow(
      'what is kept is never changed',
    );
  });

  test('one of the first version is brought up, and holds what it held', async () => {
    const older = join(scratch.path, 'older.sqlite');
    const first = await openSqlitePeopleStore(older);
    await first.addCompany({ company: 'north', name: 'North', createdAt: 1 });
    await first.close();
    // As the first version made it: without leases.
    change(older, 'DROP TABLE lease_step; DROP TABLE lease; PRAGMA user_version = 1');
    const raised = await openSqlitePeopleStore(older);
    expect(await raised.company('north')).toMatchObject({ name: 'North' });
    const lease = { company: 'north', visit: 'v', number: 1, device: 'd', person: '', takenAt: 1, behind: [] };
    expect(await raised.giveLease(lease)).toBe(true);
    await raised.close();
    expect(() => change(older, "UPDATE lease_step SET device = 'x'")).toThrow('never changed');
    expect(() => change(older, 'DELETE FROM lease_step')).toThrow('never changed');
    await (await openSqlitePeopleStore(older)).close();
  });

  test('one that held the last lease of a visit alone keeps it, and says so', async () => {
    const older = join(scratch.path, 'one-lease.sqlite');
    await (await openSqlitePeopleStore(older)).close();
    change(
      older,
      "DROP TABLE lease_step; INSERT INTO lease VALUES ('north', 'v', 'tablet', 'p', 5); PRAGMA user_version = 2",
    );
    const raised = await openSqlitePeopleStore(older);
    expect(await raised.olderLease('north', 'v')).toBe('tablet');
    expect(await raised.olderLease('south', 'v')).toBeUndefined();
    expect(await raised.leases('north', 'v')).toEqual([]);
    await raised.close();
  });

  test('one that is newer, or none of ours, is left as it is', async () => {
    const newer = join(scratch.path, 'newer.sqlite');
    await (await openSqlitePeopleStore(newer)).close();
    change(newer, 'PRAGMA user_version = 99');
    await expect(openSqlitePeopleStore(newer)).rejects.toMatchObject({ code: 'data-newer' });
    const foreign = join(scratch.path, 'foreign.sqlite');
    change(foreign, 'CREATE TABLE other (a)');
    await expect(openSqlitePeopleStore(foreign)).rejects.toMatchObject({ code: 'data-foreign' });
  });
});

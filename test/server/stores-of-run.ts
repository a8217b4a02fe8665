import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { inject } from 'vitest';
import { bringUpToDate } from '../../server/database/migrations.ts';
import { openPostgres } from '../../server/database/open-postgres.ts';
import type { SizeLimit } from '../../server/database/size-limit.ts';
import type { PeopleStore } from '../../server/people/people-store.ts';
import { sqlPeopleStore } from '../../server/people/sql-people-store.ts';
import { openSqlitePeopleStore } from '../../server/people/sqlite-people-store.ts';
import type { PersonalStore } from '../../server/personal/personal-store.ts';
import { postgresPersonalStore } from '../../server/personal/postgres-personal-store.ts';
import { openSqlitePersonalStore } from '../../server/personal/sqlite-personal-store.ts';
import type { EventStore } from '../../server/store/event-store.ts';
import { openPostgresStore } from '../../server/store/postgres-store.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';

/** Set by the project `postgres` of test/vitest.config.ts: its files run on PostgreSQL as they do on SQLite. */
export const ON_POSTGRES = process.env['READBACK_TEST_STORE'] === 'postgres';

/** A record of its own for one server of a test. */
export async function freshStore(folder: string, limit?: SizeLimit): Promise<EventStore> {
  if (!ON_POSTGRES) {
    return openSqliteStore(join(folder, 'readback.sqlite'), limit === undefined ? {} : { limit });
  }
  const database = await freshDatabase();
  return { ...(await openPostgresStore(database)), close: () => database.close() };
}

/** Databases that stand for a file, by its path: one that is opened again is the same. */
const byPath = new Map<string, string>();

/** People of its own; `path`: the file, where they are kept in one, which may be opened again. */
export async function freshPeople(path = ':memory:'): Promise<PeopleStore> {
  if (!ON_POSTGRES) return openSqlitePeopleStore(path);
  const database = await freshDatabase(byPath.get(path));
  if (path !== ':memory:') byPath.set(path, database.url);
  return sqlPeopleStore(database.db, () => database.close());
}

/** Keys, sounds and photos of its own; `path` as of people. */
export async function freshPersonal(path = ':memory:', limit?: SizeLimit): Promise<PersonalStore> {
  if (!ON_POSTGRES) return openSqlitePersonalStore(path, limit);
  const database = await freshDatabase(byPath.get(path));
  if (path !== ':memory:') byPath.set(path, database.url);
  return postgresPersonalStore(database, () => database.close());
}

/** All that is kept of people at a path, as text. */
export async function peopleText(path: string): Promise<string> {
  const url = byPath.get(path);
  if (url === undefined) return readFileSync(path, 'latin1');
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query("SELECT schema_to_xml('public', true, false, '')::text AS text");
  await client.end();
  return rows[0].text;
}

async function freshDatabase(kept?: string) {
  const url = kept ?? (await newDatabase(inject('postgres')));
  const database = await openPostgres(url);
  await bringUpToDate(database);
  return { ...database, url };
}

/** Makes an empty database beside the one that is named. */
export async function newDatabase(beside: string): Promise<string> {
  const name = `test_${randomBytes(8).toString('hex')}`;
  const client = new pg.Client({ connectionString: beside });
  await client.connect();
  await client.query(`CREATE DATABASE ${name}`);
  await client.end();
  const url = new URL(beside);
  url.pathname = `/${name}`;
  return url.href;
}

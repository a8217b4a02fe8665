import SQLite, { type Database } from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { ServerError } from '../errors.ts';
import { demandDurability } from '../store/sqlite-schema.ts';
import { asOpeningError } from '../store/sqlite-store.ts';
import type { PeopleStore } from './people-store.ts';
import { createLeases, createPeopleTables, type PeopleTables } from './people-tables.ts';
import { sqlPeopleStore } from './sql-people-store.ts';

/** People and devices in a data folder. */
export const PEOPLE_FILE = 'people.sqlite';
/** "RBP1" in ASCII: tells our files from other SQLite files. */
const APPLICATION_ID = 0x52425031;
const VERSION = 3;
const AUDIT_GUARDS = onlyGrows('audit', 'id = NEW.id', "ABORT, 'what is kept is never changed'");
/** Of two that take the lease at once the later row is passed over. */
const LEASE_GUARDS = onlyGrows(
  'lease_step',
  'company = NEW.company AND visit = NEW.visit AND number = NEW.number',
  'IGNORE',
);

/**
 * Opens the people of a data folder in one file; begins it where there is none. A tool may open it beside a server.
 * @param path of the file, or `:memory:`
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-unsafe.
 */
export async function openSqlitePeopleStore(path: string): Promise<PeopleStore> {
  const database = openDatabase(path);
  const db = new Kysely<PeopleTables>({ dialect: new SqliteDialect({ database }) });
  try {
    const found = identify(database, path);
    if (path !== ':memory:') demandDurability(database, path);
    database.pragma('busy_timeout = 5000');
    database.pragma('foreign_keys = ON');
    database.pragma('trusted_schema = OFF');
    if (found === 'new') await begin(db, database);
    else if (database.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new ServerError('data-damaged', path);
    if (found === 'older') await bringUp(db, database);
    return sqlPeopleStore(db, () => db.destroy());
  } catch (error) {
    database.close();
    throw asOpeningError(error, path);
  }
}

function openDatabase(path: string): Database {
  try {
    return new SQLite(path);
  } catch (error) {
    throw asOpeningError(error, path);
  }
}

function identify(database: Database, path: string): 'new' | 'ours' | 'older' {
  const version = database.pragma('user_version', { simple: true }) as number;
  const application = database.pragma('application_id', { simple: true });
  const tables = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get();
  if (version === 0 && application === 0 && tables === 0) return 'new';
  if (application !== APPLICATION_ID) throw new ServerError('data-foreign', path);
  if (version > VERSION) throw new ServerError('data-newer', path);
  return version < VERSION ? 'older' : 'ours';
}

async function begin(db: Kysely<PeopleTables>, database: Database): Promise<void> {
  await db.transaction().execute(async (within) => {
    await createPeopleTables(within, 'sqlite');
    await createLeases(within);
    for (const guard of [...AUDIT_GUARDS, ...LEASE_GUARDS]) database.exec(guard);
    database.pragma(`application_id = ${APPLICATION_ID}`);
    database.pragma(`user_version = ${VERSION}`);
  });
}

/** Brings the tables of an earlier version up to this one, in one transaction. */
async function bringUp(db: Kysely<PeopleTables>, database: Database): Promise<void> {
  await db.transaction().execute(async (within) => {
    await createLeases(within);
    for (const guard of LEASE_GUARDS) database.exec(guard);
    database.pragma(`user_version = ${VERSION}`);
  });
}

/** Triggers of a table that only grows. REPLACE deletes without a delete trigger, so a second row of a key is refused too. */
function onlyGrows(table: string, sameKey: string, second: string): readonly string[] {
  const refused = "BEGIN SELECT RAISE(ABORT, 'what is kept is never changed'); END";
  return [
    `CREATE TRIGGER ${table}_no_update BEFORE UPDATE ON ${table} ${refused}`,
    `CREATE TRIGGER ${table}_no_delete BEFORE DELETE ON ${table} ${refused}`,
    `CREATE TRIGGER ${table}_no_replace BEFORE INSERT ON ${table} WHEN EXISTS (SELECT 1 FROM ${table} WHERE ${sameKey})
    BEGIN SELECT RAISE(${second}); END`,
  ];
}

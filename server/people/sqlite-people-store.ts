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
const VERSION = 2;
/** The trail only grows. REPLACE deletes without a delete trigger, so a second row of a number is refused on insert. */
const GUARDS = [
  'update BEFORE UPDATE ON audit',
  'delete BEFORE DELETE ON audit',
  'replace BEFORE INSERT ON audit WHEN EXISTS (SELECT 1 FROM audit WHERE id = NEW.id)',
].map((guard) => `CREATE TRIGGER audit_no_${guard} BEGIN SELECT RAISE(ABORT, 'the trail only grows'); END`);

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
    for (const guard of GUARDS) database.exec(guard);
    database.pragma(`application_id = ${APPLICATION_ID}`);
    database.pragma(`user_version = ${VERSION}`);
  });
}

/** Brings the tables of the first version up to this one, in one transaction. */
async function bringUp(db: Kysely<PeopleTables>, database: Database): Promise<void> {
  await db.transaction().execute(async (within) => {
    await createLeases(within);
    database.pragma(`user_version = ${VERSION}`);
  });
}

import type { Database } from 'better-sqlite3';
import type { Kysely } from 'kysely';
import { openSqlite, type SqliteFile } from '../database/open-sqlite.ts';
import type { PeopleStore } from './people-store.ts';
import { createLeases, createPeopleTables, type PeopleTables } from './people-tables.ts';
import { sqlPeopleStore } from './sql-people-store.ts';

/** People and devices in a data folder. */
export const PEOPLE_FILE = 'people.sqlite';
const AUDIT_GUARDS = onlyGrows('audit', 'id = NEW.id', "ABORT, 'what is kept is never changed'");
/** Of two that take the lease at once the later row is passed over. */
const LEASE_GUARDS = onlyGrows(
  'lease_step',
  'company = NEW.company AND visit = NEW.visit AND number = NEW.number',
  'IGNORE',
);

/** The tables of that file. */
export const PEOPLE_TABLES: SqliteFile<PeopleTables> = {
  /** "RBP1" in ASCII. */
  applicationId: 0x52425031,
  version: 3,
  pragmas: ['foreign_keys = ON'],
  begin: async (db, database) => {
    await createPeopleTables(db, 'sqlite');
    for (const guard of AUDIT_GUARDS) database.exec(guard);
    await beginLeases(db, database);
  },
  bringUp: beginLeases,
};

/**
 * Opens the people of a data folder in one file; begins it where there is none. A tool may open it beside a server.
 * @param path of the file, or `:memory:`
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-unsafe.
 */
export async function openSqlitePeopleStore(path: string): Promise<PeopleStore> {
  const { db } = await openSqlite(path, PEOPLE_TABLES);
  return sqlPeopleStore(db, () => db.destroy());
}

async function beginLeases(db: Kysely<PeopleTables>, database: Database): Promise<void> {
  await createLeases(db);
  for (const guard of LEASE_GUARDS) database.exec(guard);
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

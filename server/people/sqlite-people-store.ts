import { openSqlite, type SqliteFile } from '../database/open-sqlite.ts';
import type { PeopleStore } from './people-store.ts';
import { createLeases, createPeopleTables, type PeopleTables } from './people-tables.ts';
import { sqlPeopleStore } from './sql-people-store.ts';

/** People and devices in a data folder. */
export const PEOPLE_FILE = 'people.sqlite';
/** The trail only grows. REPLACE deletes without a delete trigger, so a second row of a number is refused on insert. */
const GUARDS = [
  'update BEFORE UPDATE ON audit',
  'delete BEFORE DELETE ON audit',
  'replace BEFORE INSERT ON audit WHEN EXISTS (SELECT 1 FROM audit WHERE id = NEW.id)',
].map((guard) => `CREATE TRIGGER audit_no_${guard} BEGIN SELECT RAISE(ABORT, 'the trail only grows'); END`);

const FILE: SqliteFile<PeopleTables> = {
  /** "RBP1" in ASCII. */
  applicationId: 0x52425031,
  version: 2,
  pragmas: ['foreign_keys = ON'],
  begin: async (db, database) => {
    await createPeopleTables(db, 'sqlite');
    for (const guard of GUARDS) database.exec(guard);
  },
  bringUp: (db) => createLeases(db),
};

/**
 * Opens the people of a data folder in one file; begins it where there is none. A tool may open it beside a server.
 * @param path of the file, or `:memory:`
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-unsafe.
 */
export async function openSqlitePeopleStore(path: string): Promise<PeopleStore> {
  const { db } = await openSqlite(path, FILE);
  return sqlPeopleStore(db, () => db.destroy());
}

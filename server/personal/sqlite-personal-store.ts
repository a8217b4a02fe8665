import type { Database } from 'better-sqlite3';
import { openSqlite, type SqliteFile } from '../database/open-sqlite.ts';
import type { SizeLimit } from '../database/size-limit.ts';
import type { PersonalStore } from './personal-store.ts';
import { createPersonalTables, keepFilesByDevice, type PersonalTables } from './personal-tables.ts';
import { sqlPersonalStore } from './sql-personal-store.ts';

/** Keys of visits, sounds and photos in a data folder. */
export const PERSONAL_FILE = 'personal.sqlite';

/** The tables of that file. */
export const PERSONAL_TABLES: SqliteFile<PersonalTables> = {
  /** "RBK1" in ASCII. */
  applicationId: 0x52424b31,
  /** 2: files by device. */
  version: 2,
  pragmas: ['secure_delete = ON'],
  begin: async (db) => {
    await createPersonalTables(db, 'blob');
    await keepFilesByDevice(db, 'blob');
  },
  bringUp: (db) => keepFilesByDevice(db, 'blob'),
};

/**
 * Opens what is personal of a data folder; begins it where there is none. A tool may open it beside a server. What is
 * deleted is overwritten in the file (`secure_delete`).
 *
 * @param path of the file, or `:memory:`
 * @param limit what it may come to, with others
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-unsafe.
 */
export async function openSqlitePersonalStore(path: string, limit?: SizeLimit): Promise<PersonalStore> {
  const { database, db } = await openSqlite(path, PERSONAL_TABLES);
  const store = sqlPersonalStore(db, {
    overwriteErased: async () => emptyLog(database),
    close: () => db.destroy(),
  });
  // What a program that ended in between left in the log.
  emptyLog(database);
  return limit === undefined ? store : within(limit, database, store);
}

/** What was erased is overwritten in the file by then, and is not left in the log beside it either. */
function emptyLog(database: Database): readonly string[] {
  const [{ busy } = { busy: 0 }] = database.pragma('wal_checkpoint(TRUNCATE)') as { readonly busy: number }[];
  if (busy === 0) return [];
  return ['The log beside the file is being read: what was erased lies in it until it is written anew.'];
}

function within(limit: SizeLimit, database: Database, store: PersonalStore): PersonalStore {
  return {
    ...store,
    addKey: limit.held(database, store.addKey),
    beginAttachment: limit.held(database, store.beginAttachment),
    addPart: limit.held(database, store.addPart),
    eraseVisit: limit.lifted(database, store.eraseVisit),
    eraseBefore: limit.lifted(database, store.eraseBefore),
  };
}

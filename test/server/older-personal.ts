import SQLite from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { createPersonalTables, type PersonalTables } from '../../server/personal/personal-tables.ts';

/** What is personal as the first version kept it in a file, with these rows in its tables. */
export async function writeOlderPersonal(path: string, rows = ''): Promise<void> {
  const database = new SQLite(path);
  const db = new Kysely<PersonalTables>({ dialect: new SqliteDialect({ database }) });
  database.pragma('journal_mode = WAL');
  await createPersonalTables(db, 'blob');
  database.exec(`PRAGMA application_id = 0x52424b31; PRAGMA user_version = 1; ${rows}`);
  await db.destroy();
}

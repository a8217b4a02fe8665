import SQLite, { type Database } from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { ServerError } from '../errors.ts';
import { demandDurability } from '../store/sqlite-schema.ts';
import { asOpeningError } from '../store/sqlite-store.ts';
import type { PersonalStore } from './personal-store.ts';
import { createPersonalTables, type PersonalTables } from './personal-tables.ts';
import { sqlPersonalStore } from './sql-personal-store.ts';

/** Keys of visits, sounds and photos in a data folder. */
export const PERSONAL_FILE = 'personal.sqlite';
/** "RBK1" in ASCII: tells our files from other SQLite files. */
const APPLICATION_ID = 0x52424b31;
const VERSION = 1;

/**
 * Opens what is personal of a data folder; begins it where there is none. A tool may open it beside a server. What is
 * deleted is overwritten in the file (`secure_delete`).
 *
 * @param path of the file, or `:memory:`
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-unsafe.
 */
export async function openSqlitePersonalStore(path: string): Promise<PersonalStore> {
  const database = openDatabase(path);
  const db = new Kysely<PersonalTables>({ dialect: new SqliteDialect({ database }) });
  try {
    const found = identify(database, path);
    if (path !== ':memory:') demandDurability(database, path);
    database.pragma('busy_timeout = 5000');
    database.pragma('trusted_schema = OFF');
    database.pragma('secure_delete = ON');
    if (found === 'new') await begin(db, database);
    else if (database.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new ServerError('data-damaged', path);
    const store = sqlPersonalStore(db, () => db.destroy());
    return { ...store, ...forgetting(store, database) };
  } catch (error) {
    database.close();
    throw asOpeningError(error, path);
  }
}

/** What was erased is not left in the log beside the file either. */
function forgetting(store: PersonalStore, database: Database): Pick<PersonalStore, 'eraseVisit' | 'eraseBefore'> {
  const forget = () => void database.pragma('wal_checkpoint(TRUNCATE)');
  return {
    eraseVisit: async (...given) => {
      const erased = await store.eraseVisit(...given);
      forget();
      return erased;
    },
    eraseBefore: async (...given) => {
      const erased = await store.eraseBefore(...given);
      if (erased.length > 0) forget();
      return erased;
    },
  };
}

function openDatabase(path: string): Database {
  try {
    return new SQLite(path);
  } catch (error) {
    throw asOpeningError(error, path);
  }
}

function identify(database: Database, path: string): 'new' | 'ours' {
  const version = database.pragma('user_version', { simple: true }) as number;
  const application = database.pragma('application_id', { simple: true });
  const tables = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get();
  if (version === 0 && application === 0 && tables === 0) return 'new';
  if (application !== APPLICATION_ID) throw new ServerError('data-foreign', path);
  if (version > VERSION) throw new ServerError('data-newer', path);
  return 'ours';
}

async function begin(db: Kysely<PersonalTables>, database: Database): Promise<void> {
  await db.transaction().execute(async (within) => {
    await createPersonalTables(within, 'blob');
    database.pragma(`application_id = ${APPLICATION_ID}`);
    database.pragma(`user_version = ${VERSION}`);
  });
}

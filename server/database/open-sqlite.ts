import { basename, join } from 'node:path';
import SQLite, { type Database } from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { ServerError } from '../errors.ts';
import { demandDurability } from '../store/sqlite-schema.ts';
import { asOpeningError } from '../store/sqlite-store.ts';

/** A kind of file that kysely's queries read and change: people, what is personal. The record is opened by its own. */
export interface SqliteFile<Tables> {
  /** Tells our files from other SQLite files. */
  readonly applicationId: number;
  readonly version: number;
  /** What is set beside what every such file has. */
  readonly pragmas: readonly string[];
  /** Makes all tables of a new file. */
  readonly begin: (db: Kysely<Tables>, database: Database) => Promise<void>;
  /** Brings those of an older version up to this one. @param from that version */
  readonly bringUp: (db: Kysely<Tables>, database: Database, from: number) => Promise<void>;
}

/** What a store is made on. */
export interface OpenedSqlite<Tables> {
  readonly database: Database;
  readonly db: Kysely<Tables>;
}

/**
 * Opens such a file, begins it where there is none, and brings an older one up to date in one transaction. A tool may
 * open it beside a server.
 *
 * @param path of the file, or `:memory:`
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-unsafe.
 */
export async function openSqlite<Tables>(path: string, file: SqliteFile<Tables>): Promise<OpenedSqlite<Tables>> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await openOnce(path, file);
    } catch (error) {
      if (tries === MOST_TRIES || !isBusy(error)) throw error;
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    }
  }
}

/** SQLite does not wait by itself where two programs switch a new file to its log at once: five seconds as elsewhere. */
const AGAIN_MS = 50;
const MOST_TRIES = 100;

function isBusy(error: unknown): boolean {
  const { cause } = error as { readonly cause?: unknown };
  return cause instanceof SQLite.SqliteError && /^SQLITE_(BUSY|LOCKED)/.test(cause.code);
}

async function openOnce<Tables>(path: string, file: SqliteFile<Tables>): Promise<OpenedSqlite<Tables>> {
  const database = openDatabase(path);
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
  try {
    const found = identify(database, path, file);
    if (path !== ':memory:') demandDurability(database, path);
    for (const pragma of ['busy_timeout = 5000', 'trusted_schema = OFF', ...file.pragmas]) database.pragma(pragma);
    if (found > 0 && database.pragma('quick_check(1)', { simple: true }) !== 'ok') {
      throw new ServerError('data-damaged', path);
    }
    if (found < file.version) await bringUpToDate(database, db, path, file);
    return { database, db };
  } catch (error) {
    database.close();
    throw asOpeningError(error, path);
  }
}

/** Of two programs that open it at once one does it, the other waits and finds it done. */
async function bringUpToDate<Tables>(
  database: Database,
  db: Kysely<Tables>,
  path: string,
  file: SqliteFile<Tables>,
): Promise<void> {
  database.exec('BEGIN IMMEDIATE');
  try {
    const found = identify(database, path, file);
    if (found === 0) await file.begin(db, database);
    else if (found < file.version) await file.bringUp(db, database, found);
    database.pragma(`application_id = ${file.applicationId}`);
    database.pragma(`user_version = ${file.version}`);
    database.exec('COMMIT');
  } catch (error) {
    if (database.inTransaction) database.exec('ROLLBACK');
    throw error;
  }
}

/**
 * Opens such a file to be read and leaves it as it is: of one of an older version a copy is brought up to date.
 *
 * @param passing folder for that copy
 * @throws {ServerError} what opening it throws.
 */
export async function readUpToDate<Tables>(path: string, file: SqliteFile<Tables>, passing: string): Promise<Database> {
  const database = new SQLite(path, { readonly: true });
  if (identify(database, path, file) === file.version) return database;
  const copy = join(passing, basename(path));
  await database.backup(copy);
  database.close();
  await (await openSqlite(copy, file)).db.destroy();
  return new SQLite(copy, { readonly: true });
}

function openDatabase(path: string): Database {
  try {
    return new SQLite(path);
  } catch (error) {
    throw asOpeningError(error, path);
  }
}

/** Its version; 0 where it is new. */
function identify<Tables>(database: Database, path: string, { applicationId, version }: SqliteFile<Tables>): number {
  // As it stood at one moment: another program may be beginning it.
  const { found, application, tables } = database.transaction(() => ({
    found: database.pragma('user_version', { simple: true }) as number,
    application: database.pragma('application_id', { simple: true }),
    tables: database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get(),
  }))();
  if (found === 0 && application === 0 && tables === 0) return 0;
  if (application !== applicationId) throw new ServerError('data-foreign', path);
  if (found > version) throw new ServerError('data-newer', path);
  return Math.max(found, 1);
}

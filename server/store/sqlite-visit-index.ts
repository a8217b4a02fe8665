import { rmSync } from 'node:fs';
import SQLite, { type Database } from 'better-sqlite3';
import { Kysely, SqliteDialect, sql } from 'kysely';
import { sqlVisitIndex } from './sql-visit-index.ts';
import type { VisitIndex } from './visit-index.ts';
import { createIndexTables, type IndexTables } from './visit-index-tables.ts';

/** Briefs of the visits beside the record. Not backed up: it is made anew where it is missing. */
export const INDEX_FILE = 'visit-index.sqlite';
/** Raised when briefs hold or mean something else: an index of another version is thrown away and made anew. */
const VERSION = 5;

/**
 * Opens the index of a data folder in one file. What is there and cannot be used (damaged, foreign, of another version)
 * is thrown away: nothing stands in it that the record does not hold. Where no file can be written it is kept in memory.
 *
 * @param path of the file, or `:memory:`
 */
export async function openSqliteVisitIndex(path: string): Promise<VisitIndex> {
  if (path === ':memory:') return begin(new SQLite(path));
  try {
    return await openFile(path);
  } catch {
    for (const end of ['', '-wal', '-shm']) rmSync(`${path}${end}`, { force: true });
  }
  try {
    return await openFile(path);
  } catch {
    return begin(new SQLite(':memory:'));
  }
}

async function openFile(path: string): Promise<VisitIndex> {
  const database = new SQLite(path);
  try {
    const version = database.pragma('user_version', { simple: true });
    const tables = database.prepare<[], number>('SELECT count(*) FROM sqlite_schema').pluck().get();
    if (version !== VERSION && tables !== 0) throw new Error('an index of another version');
    database.pragma('journal_mode = WAL');
    // What a power cut takes of it is made anew: the events that a brief was made of are counted in it.
    database.pragma('synchronous = OFF');
    database.pragma('secure_delete = ON');
    if (tables !== 0 && database.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new Error('damaged');
    return tables === 0 ? await begin(database) : overDatabase(database);
  } catch (error) {
    database.close();
    throw error;
  }
}

async function begin(database: Database): Promise<VisitIndex> {
  const db = kyselyOf(database);
  await createIndexTables(db);
  await sql`CREATE VIRTUAL TABLE spoken USING fts5 (words, tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3')`.execute(
    db,
  );
  await sql`INSERT INTO spoken (spoken, rank) VALUES ('secure-delete', 1)`.execute(db);
  database.pragma(`user_version = ${VERSION}`);
  return overDatabase(database);
}

const kyselyOf = (database: Database) => new Kysely<IndexTables>({ dialect: new SqliteDialect({ database }) });

/** What is forgotten is overwritten in the file, and not left in the log beside it. */
function overDatabase(database: Database): VisitIndex {
  const index = sqlVisitIndex(kyselyOf(database));
  return {
    ...index,
    forget: async (company, visit) => {
      await index.forget(company, visit);
      database.pragma('wal_checkpoint(TRUNCATE)');
    },
  };
}

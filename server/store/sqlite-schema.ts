import SQLite, { type Database } from 'better-sqlite3';
import { ServerError } from '../errors.ts';

/** "RBK1" in ASCII: tells our files from other SQLite files. */
const APPLICATION_ID = 0x52424b31;
/** 2: with `said`. */
const VERSION = 2;
/** Added to the version while a server writes: a file copied then, without its log, tells by it that it is not whole. */
const IN_USE = 1000;

/** Tables that only grow. REPLACE deletes without a delete trigger, so a second row of a key is refused on insert. */
const TABLES = `
CREATE TABLE stream (
  id INTEGER PRIMARY KEY,
  company TEXT NOT NULL,
  visit TEXT NOT NULL,
  device TEXT NOT NULL,
  epoch INTEGER NOT NULL,
  follows_epoch INTEGER,
  follows_seq INTEGER,
  follows_hash TEXT,
  UNIQUE (company, visit, device, epoch)
) STRICT;

CREATE TABLE event (
  arrival INTEGER PRIMARY KEY AUTOINCREMENT,
  stream INTEGER NOT NULL REFERENCES stream (id),
  seq INTEGER NOT NULL CHECK (seq >= 1),
  hash TEXT NOT NULL,
  body BLOB NOT NULL,
  received_at INTEGER NOT NULL,
  clock_offset INTEGER,
  UNIQUE (stream, seq)
) STRICT;

CREATE TABLE fork (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  stream INTEGER NOT NULL REFERENCES stream (id),
  seq INTEGER NOT NULL,
  hash TEXT NOT NULL,
  body BLOB NOT NULL,
  received_at INTEGER NOT NULL,
  UNIQUE (stream, seq, hash)
) STRICT;
`;

/** Where devices said that their streams end. It names streams by themselves: nothing of one may have come yet. */
const SAID_TABLE = `
CREATE TABLE said (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  company TEXT NOT NULL,
  visit TEXT NOT NULL,
  device TEXT NOT NULL,
  epoch INTEGER NOT NULL,
  seq INTEGER NOT NULL CHECK (seq >= 1),
  hash TEXT NOT NULL,
  said_at INTEGER NOT NULL,
  UNIQUE (company, visit, device, epoch, seq)
) STRICT;
`;

/** Each table's key, as a condition that finds a row NEW would replace. */
const KEYS: Readonly<Record<string, string>> = {
  stream: 'id = NEW.id OR (company = NEW.company AND visit = NEW.visit AND device = NEW.device AND epoch = NEW.epoch)',
  event: 'arrival = NEW.arrival OR (stream = NEW.stream AND seq = NEW.seq)',
  fork: 'id = NEW.id OR (stream = NEW.stream AND seq = NEW.seq AND hash = NEW.hash)',
};

const SAID_KEY = `id = NEW.id OR
  (company = NEW.company AND visit = NEW.visit AND device = NEW.device AND epoch = NEW.epoch AND seq = NEW.seq)`;

const guard = (table: string, key: string) => `
CREATE TRIGGER ${table}_no_update BEFORE UPDATE ON ${table}
BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;
CREATE TRIGGER ${table}_no_delete BEFORE DELETE ON ${table}
BEGIN SELECT RAISE(ABORT, 'a record is never deleted'); END;
CREATE TRIGGER ${table}_no_replace BEFORE INSERT ON ${table}
WHEN EXISTS (SELECT 1 FROM ${table} WHERE ${key})
BEGIN SELECT RAISE(ABORT, 'a record is never replaced'); END;`;

const GUARDS = Object.entries(KEYS)
  .map(([table, key]) => guard(table, key))
  .join('\n');
const SAID = SAID_TABLE + guard('said', SAID_KEY);

/**
 * Tells a new file from a record of ours, before anything is written to it; `older` is one of a version before this.
 * @throws {ServerError} data-foreign, data-newer.
 */
export function identify(database: Database, path: string): 'new' | 'ours' | 'older' {
  const version = versionOf(database) % IN_USE;
  const application = database.pragma('application_id', { simple: true });
  const tables = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get();
  if (version === 0 && application === 0 && tables === 0) return 'new';
  if (application !== APPLICATION_ID) throw new ServerError('data-foreign', path);
  if (version > VERSION) throw new ServerError('data-newer', path);
  return version === VERSION ? 'ours' : 'older';
}

function versionOf(database: Database): number {
  return database.pragma('user_version', { simple: true }) as number;
}

/** Whether the file says that a server was writing it. */
export function isMarkedInUse(database: Database): boolean {
  return versionOf(database) >= IN_USE;
}

/** Says in the file itself, and not only in its log, whether a server writes it. */
export function markInUse(database: Database, inUse: boolean): void {
  database.pragma(`user_version = ${(versionOf(database) % IN_USE) + (inUse ? IN_USE : 0)}`);
  database.pragma('wal_checkpoint(TRUNCATE)');
}

export function createTables(database: Database): void {
  database.transaction(() => {
    database.exec(TABLES + GUARDS + SAID);
    database.pragma(`application_id = ${APPLICATION_ID}`);
    database.pragma(`user_version = ${VERSION}`);
  })();
}

/** Tables, guards and indexes that are not as this program makes them, or that it does not know, by their names. */
export function changedStructure(database: Database): readonly string[] {
  const made = new SQLite(':memory:');
  try {
    createTables(made);
    const isOlder = versionOf(database) % IN_USE < VERSION;
    const [wanted, found] = [structureOf(made), structureOf(database)];
    const names = new Set([...wanted.keys(), ...found.keys()]);
    return [...names].filter((name) => wanted.get(name) !== found.get(name) && !(isOlder && name.startsWith('said')));
  } finally {
    made.close();
  }
}

/** What makes up the file, by name; what SQLite makes for itself is left out. */
function structureOf(database: Database): ReadonlyMap<string, string> {
  const rows = database
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite%'",
    )
    .all();
  return new Map(rows.map(({ name, sql }) => [name, sql.replaceAll(/\s+/g, ' ')]));
}

/** Adds what a record of an older version lacks; what is written in it stays as it is. */
export function bringUpToDate(database: Database): void {
  database.transaction(() => {
    database.exec(SAID);
    database.pragma(`user_version = ${VERSION}`);
  })();
}

/**
 * Reads the structure of the whole file, and whether something was done to its tables: a trigger that swallows what is
 * put in would have it acknowledged and not kept.
 * @throws {ServerError} data-damaged, data-changed.
 */
export function checkWhole(database: Database, path: string): void {
  if (database.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new ServerError('data-damaged', path);
  const changed = changedStructure(database);
  if (changed.length > 0) throw new ServerError('data-changed', `${path} (${changed.join(', ')})`);
}

/**
 * The log is taken over into the file at so many pages of 4 KiB (SQLite's own: 1,000). An index page that each batch
 * changes is then written to the file once where it was written often.
 */
const PAGES_OF_LOG = 4_000;

/**
 * Sets what makes a commit outlive a power cut, and reads it back: a WAL file that is opened again silently falls to
 * synchronous=NORMAL, which loses the last commits.
 * @throws {ServerError} data-unsafe.
 */
export function demandDurability(database: Database, path: string): void {
  const journal = database.pragma('journal_mode = WAL', { simple: true });
  database.pragma('synchronous = FULL');
  const synchronous = database.pragma('synchronous', { simple: true });
  database.pragma(`wal_autocheckpoint = ${PAGES_OF_LOG}`);
  const FULL = 2;
  if (journal !== 'wal' || synchronous !== FULL) throw new ServerError('data-unsafe', path);
}

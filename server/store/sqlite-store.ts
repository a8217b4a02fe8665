import { existsSync } from 'node:fs';
import SQLite, { type Database } from 'better-sqlite3';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { SizeLimit } from '../database/size-limit.ts';
import { ServerError } from '../errors.ts';
import type { EventStore } from './event-store.ts';
import { sqliteReader } from './sqlite-reader.ts';
import {
  bringUpToDate,
  checkWhole,
  createTables,
  demandDurability,
  identify,
  isMarkedInUse,
  markInUse,
} from './sqlite-schema.ts';
import { sqliteWriter } from './sqlite-writer.ts';
import { VisitActivity } from './visit-activity.ts';

export interface SqliteOptions {
  /** The file stops growing where this ends, as if the disk were full. */
  readonly limit?: SizeLimit;
  /** Opens also a file that was copied, or left, without the log that belongs to it. */
  readonly acceptLoss?: boolean;
}

export interface SqliteStore extends EventStore {
  /** Whether it was there, and closed as it should be: what is written beside it is then as it was at that moment. */
  readonly leftInOrder: boolean;
  /** Whether a version before this one made it. */
  readonly older: boolean;
  /** Streams that hold fewer events than the number of their last: something in their middle is gone. */
  readonly withHoles: () => readonly StreamId[];
}

/** The record in a data folder. */
export const RECORD_FILE = 'readback.sqlite';

/**
 * Opens the embedded store in one file; begins it where there is none.
 * @throws {ServerError} data-unwritable, data-foreign, data-newer, data-damaged, data-changed, data-unsafe, data-copied.
 */
export function openSqliteStore(path: string, options: SqliteOptions = {}): SqliteStore {
  const hasLog = existsSync(`${path}-wal`);
  const database = openDatabase(path);
  try {
    const found = identify(database, path);
    const leftInUse = isMarkedInUse(database);
    if (leftInUse && !hasLog && options.acceptLoss !== true) throw new ServerError('data-copied', path);
    demandDurability(database, path);
    database.pragma('busy_timeout = 5000');
    database.pragma('foreign_keys = ON');
    database.pragma('trusted_schema = OFF');
    if (found === 'new') createTables(database);
    else checkWhole(database, path);
    if (found === 'older') bringUpToDate(database);
    markInUse(database, true);
    const activity = VisitActivity.of(database);
    const holes = database.prepare<[], StreamId>(`
      SELECT company, visit, device, epoch FROM stream JOIN event ON event.stream = stream.id
      GROUP BY stream.id HAVING count(*) <> max(seq)`);
    return {
      leftInOrder: found !== 'new' && !leftInUse,
      older: found === 'older',
      withHoles: () => holes.all(),
      ...sqliteReader(database, activity),
      ...within(options.limit, database, sqliteWriter(database, activity)),
      close: async () => {
        markInUse(database, false);
        database.close();
      },
    };
  } catch (error) {
    database.close();
    throw asOpeningError(error, path);
  }
}

type Writer = ReturnType<typeof sqliteWriter>;

function within(limit: SizeLimit | undefined, database: Database, writer: Writer): Writer {
  if (limit === undefined) return writer;
  return {
    open: limit.held(database, writer.open),
    commit: limit.held(database, writer.commit),
    note: limit.held(database, writer.note),
  };
}

function openDatabase(path: string): Database {
  try {
    return new SQLite(path);
  } catch (error) {
    throw asOpeningError(error, path);
  }
}

/** Why a record cannot be opened, in a sentence. `otherwise`: where it is neither foreign nor damaged. */
export function asOpeningError(
  error: unknown,
  path: string,
  otherwise: 'data-unwritable' | 'data-unreadable' = 'data-unwritable',
): ServerError {
  if (error instanceof ServerError) return error;
  if (!(error instanceof SQLite.SqliteError)) return new ServerError(otherwise, path, error);
  if (error.code === 'SQLITE_NOTADB') return new ServerError('data-foreign', path, error);
  // A table that is not there, in a file that says it is ours.
  if (error.code.startsWith('SQLITE_CORRUPT') || error.code === 'SQLITE_ERROR')
    return new ServerError('data-damaged', path, error);
  return new ServerError(otherwise, path, error);
}

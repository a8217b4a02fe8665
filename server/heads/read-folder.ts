import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { ServerError } from '../errors.ts';
import { identify } from '../store/sqlite-schema.ts';
import { asOpeningError, RECORD_FILE } from '../store/sqlite-store.ts';
import { isFolderInUse } from './folder-lock.ts';

/** The record of a folder, opened to be read. */
export interface OpenedRecord {
  readonly database: SQLite.Database;
  /** Whether its log stood beside it. */
  readonly hasLog: boolean;
}

/**
 * Reads the record of a data folder and leaves the folder as it is. SQLite puts a log beside a file that it opens, also
 * to read, and an empty log would hide that the right one is gone: where no server writes, a copy in a folder for what
 * is passing is read, which takes as much room there as the record has. Where one writes, its log is there already.
 *
 * @throws {ServerError} tool-wrong, where there is no record; data-foreign, data-newer, data-damaged, data-unreadable.
 */
export async function readRecord<Read>(
  folder: string,
  read: (record: OpenedRecord) => Promise<Read> | Read,
): Promise<Read> {
  const path = join(folder, RECORD_FILE);
  if (!existsSync(path)) throw new ServerError('tool-wrong', `There is no record in ${folder}: name a data folder.`);
  const hasLog = existsSync(`${path}-wal`);
  const passing = isFolderInUse(folder) ? undefined : mkdtempSync(join(tmpdir(), 'readback-'));
  let database: SQLite.Database | undefined;
  try {
    database = new SQLite(passing === undefined ? path : copied(path, passing), {
      readonly: passing === undefined,
      fileMustExist: true,
    });
    if (identify(database, path) === 'new') {
      throw new ServerError('data-damaged', path, new Error('There is nothing in the file.'));
    }
    return await read({ database, hasLog });
  } catch (error) {
    throw isOfTheDisk(error) ? asOpeningError(error, path, 'data-unreadable') : error;
  } finally {
    database?.close();
    if (passing !== undefined) rmSync(passing, { recursive: true, force: true });
  }
}

/** Whether the system or the database refused something; any other error is a fault of ours, and stays one. */
export function isOfTheDisk(error: unknown): boolean {
  return error instanceof SQLite.SqliteError || typeof (error as NodeJS.ErrnoException).syscall === 'string';
}

/** The file and its log, as they stand; what only speeds up its reading is made anew. */
function copied(path: string, to: string): string {
  const copy = join(to, RECORD_FILE);
  for (const end of ['', '-wal']) {
    if (existsSync(`${path}${end}`)) copyFileSync(`${path}${end}`, `${copy}${end}`);
  }
  return copy;
}

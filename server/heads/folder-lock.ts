import { existsSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { ServerError } from '../errors.ts';

export const LOCK_FILE = 'in-use.lock';

/**
 * Keeps a data folder to one server: a lock of the operating system on a small file in it, gone with the process however
 * that ends. Returns what lets it go.
 * @throws {ServerError} folder-in-use, data-unwritable.
 */
export function lockFolder(folder: string): () => void {
  const path = join(folder, LOCK_FILE);
  let database: SQLite.Database | undefined;
  try {
    database = new SQLite(path, { timeout: 0 });
    database.pragma('journal_mode = MEMORY');
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database?.close();
    throw new ServerError(isBusy(error) ? 'folder-in-use' : 'data-unwritable', folder, error);
  }
  const held = database;
  return () => held.close();
}

/** Whether a server keeps its record in a folder now; nothing is written to find out. */
export function isFolderInUse(folder: string): boolean {
  const path = join(folder, LOCK_FILE);
  if (!existsSync(path)) return false;
  let database: SQLite.Database | undefined;
  try {
    database = new SQLite(path, { readonly: true, timeout: 0 });
    database.prepare('SELECT count(*) FROM sqlite_schema').get();
    return false;
  } catch (error) {
    return isBusy(error);
  } finally {
    database?.close();
  }
}

function isBusy(error: unknown): boolean {
  return (error as { readonly code?: string }).code?.startsWith('SQLITE_BUSY') === true;
}

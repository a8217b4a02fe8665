import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { ServerError } from '../errors.ts';

/**
 * Keeps a data folder to one server: a lock of the operating system on a small file in it, gone with the process however
 * that ends. Returns what lets it go.
 * @throws {ServerError} folder-in-use, data-unwritable.
 */
export function lockFolder(folder: string): () => void {
  const path = join(folder, 'in-use.lock');
  let database: SQLite.Database | undefined;
  try {
    database = new SQLite(path, { timeout: 0 });
    database.pragma('journal_mode = MEMORY');
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database?.close();
    const { code } = error as { code?: string };
    throw new ServerError(code?.startsWith('SQLITE_BUSY') ? 'folder-in-use' : 'data-unwritable', folder, error);
  }
  const held = database;
  return () => held.close();
}

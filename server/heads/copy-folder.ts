import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { ServerError } from '../errors.ts';
import { identify, isMarkedInUse, markInUse } from '../store/sqlite-schema.ts';
import { RECORD_FILE } from '../store/sqlite-store.ts';
import { KEY_FILE } from '../sync/receipt-signer.ts';
import { lockFolder } from './folder-lock.ts';
import { lowerHighWater } from './high-water.ts';
import { HEADS_FILE, HIGH_WATER_FILE } from './keep-heads.ts';

/**
 * Copies a data folder whole, while its server writes: heads first, so that they never speak of what the copy lacks,
 * then the record by SQLite's own online backup, the key, and how far the copy reaches.
 *
 * @returns how many events the copy holds
 * @throws {ServerError} tool-wrong, where there is no record or the copy's folder is not empty; data-unwritable.
 */
export async function backUpFolder(folder: string, copy: string): Promise<number> {
  const source = join(folder, RECORD_FILE);
  if (!existsSync(source)) throw new ServerError('tool-wrong', `There is no record in ${folder}: name a data folder.`);
  makeEmpty(copy);
  copyBeside(folder, copy, HEADS_FILE);
  copyBeside(folder, copy, KEY_FILE);
  const database = new SQLite(source, { readonly: true });
  try {
    await database.backup(join(copy, RECORD_FILE));
  } finally {
    database.close();
  }
  return finishCopy(copy);
}

/**
 * Puts a backup in the place of a data folder that holds no record, and no server.
 *
 * @returns how many events it holds
 * @throws {ServerError} tool-wrong, folder-in-use, data-copied, data-unwritable.
 */
export function restoreFolder(backup: string, folder: string): number {
  const source = join(backup, RECORD_FILE);
  if (!existsSync(source)) throw new ServerError('tool-wrong', `There is no backup in ${backup}: name its folder.`);
  if (isUnfinished(source)) throw new ServerError('data-copied', source);
  mkdirSync(folder, { recursive: true });
  const letGo = lockFolder(folder);
  try {
    if (existsSync(join(folder, RECORD_FILE))) {
      throw new ServerError('tool-wrong', `${folder} holds a record: move it away first, or name another folder.`);
    }
    for (const name of [HEADS_FILE, KEY_FILE, RECORD_FILE]) copyBeside(backup, folder, name);
    return finishCopy(folder);
  } finally {
    letGo();
  }
}

/** A file that was copied while it was written, and its log was not. */
function isUnfinished(path: string): boolean {
  if (existsSync(`${path}-wal`)) return false;
  const database = new SQLite(path, { readonly: true });
  try {
    return isMarkedInUse(database);
  } finally {
    database.close();
  }
}

function finishCopy(folder: string): number {
  const path = join(folder, RECORD_FILE);
  const database = new SQLite(path);
  try {
    identify(database, path);
    markInUse(database, false);
    const last = database.prepare<[], number | null>('SELECT max(arrival) FROM event').pluck().get() ?? 0;
    lowerHighWater(join(folder, HIGH_WATER_FILE), last);
    return database.prepare<[], number>('SELECT count(*) FROM event').pluck().get() ?? 0;
  } finally {
    database.close();
  }
}

function makeEmpty(folder: string): void {
  mkdirSync(folder, { recursive: true });
  if (readdirSync(folder).length > 0) {
    throw new ServerError('tool-wrong', `${folder} is not empty: name a folder of its own for each backup.`);
  }
}

function copyBeside(from: string, to: string, name: string): void {
  if (existsSync(join(from, name))) copyFileSync(join(from, name), join(to, name));
}

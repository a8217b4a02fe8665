import { copyFileSync, existsSync, readdirSync, realpathSync, rmSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import SQLite from 'better-sqlite3';
import { ServerError } from '../errors.ts';
import { PEOPLE_FILE } from '../people/sqlite-people-store.ts';
import { PERSONAL_FILE } from '../personal/sqlite-personal-store.ts';
import { checkWhole, identify, isMarkedInUse, markInUse } from '../store/sqlite-schema.ts';
import { RECORD_FILE } from '../store/sqlite-store.ts';
import { KEY_FILE } from '../sync/receipt-signer.ts';
import { LOCK_FILE, lockFolder } from './folder-lock.ts';
import { GIVEN_UP_FILE } from './given-up.ts';
import { HEADS_FILE, HIGH_WATER_FILE } from './heads-in-folder.ts';
import { openHighWater } from './high-water.ts';
import { makeFolder } from './make-folder.ts';
import { isOfTheDisk, readRecord } from './read-folder.ts';

/** What a folder is copied with; the number of how far it reaches is written anew. */
const FILES = [
  HEADS_FILE,
  GIVEN_UP_FILE,
  KEY_FILE,
  RECORD_FILE,
  `${RECORD_FILE}-wal`,
  PEOPLE_FILE,
  `${PEOPLE_FILE}-wal`,
  PERSONAL_FILE,
  `${PERSONAL_FILE}-wal`,
];

/**
 * Copies a data folder whole, while its server writes: heads first, so that they never speak of what the copy lacks,
 * then record, people and what is personal by SQLite's own online backup, the key, and how far the copy reaches. Where it fails it leaves nothing.
 *
 * @returns how many events the copy holds
 * @throws {ServerError} tool-wrong, where there is no record, the copy's folder is not empty or lies in the data folder;
 *   data-unwritable, data-unreadable, data-foreign, data-newer, data-damaged, data-copied.
 */
export async function backUpFolder(folder: string, copy: string): Promise<number> {
  return readRecord(folder, async ({ database, hasLog }) => {
    if (isMarkedInUse(database) && !hasLog) throw new ServerError('data-copied', join(folder, RECORD_FILE));
    if (`${realPath(copy)}${sep}`.startsWith(`${realPath(folder)}${sep}`)) {
      throw new ServerError('tool-wrong', `${copy} lies in the data folder itself: name a folder elsewhere.`);
    }
    return intoEmpty(copy, async () => {
      for (const name of [HEADS_FILE, GIVEN_UP_FILE, KEY_FILE]) copyBeside(folder, copy, name);
      await database.backup(join(copy, RECORD_FILE));
      for (const name of [PEOPLE_FILE, PERSONAL_FILE]) await copyDatabase(folder, copy, name);
      return finishCopy(copy);
    });
  });
}

/**
 * Puts a backup in the place of a data folder that holds no record, and no server. Where it fails it leaves nothing.
 *
 * @returns how many events it holds
 * @throws {ServerError} tool-wrong, folder-in-use, data-copied, data-unwritable, data-unreadable, data-foreign, data-newer,
 *   data-damaged.
 */
export async function restoreFolder(backup: string, folder: string): Promise<number> {
  const source = join(backup, RECORD_FILE);
  if (!existsSync(source)) throw new ServerError('tool-wrong', `There is no backup in ${backup}: name its folder.`);
  await readRecord(backup, ({ database, hasLog }) => {
    if (isMarkedInUse(database) && !hasLog) throw new ServerError('data-copied', source);
    checkWhole(database, source);
  });
  const before = existsSync(folder) ? readNames(folder) : [];
  const made = makeFolder(folder);
  try {
    const letGo = lockFolder(folder);
    try {
      if (before.includes(RECORD_FILE)) {
        throw new ServerError('tool-wrong', `${folder} holds a record: move it away first, or name another folder.`);
      }
      for (const name of FILES) copyBeside(backup, folder, name);
      return finishCopy(folder);
    } catch (error) {
      for (const name of [...FILES, HIGH_WATER_FILE, LOCK_FILE]) {
        if (!before.includes(name)) rmSync(join(folder, name), { force: true });
      }
      throw asCopyError(error, folder);
    } finally {
      letGo();
    }
  } catch (error) {
    if (made !== undefined) rmSync(made, { recursive: true, force: true });
    throw error;
  }
}

async function copyDatabase(folder: string, copy: string, name: string): Promise<void> {
  const path = join(folder, name);
  if (!existsSync(path)) return;
  const database = new SQLite(path, { fileMustExist: true });
  try {
    await database.backup(join(copy, name));
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
    openHighWater(join(folder, HIGH_WATER_FILE), last).close();
    return database.prepare<[], number>('SELECT count(*) FROM event').pluck().get() ?? 0;
  } finally {
    database.close();
  }
}

/** Fills a folder that is new or empty, and leaves it so where that fails. */
async function intoEmpty(folder: string, fill: () => Promise<number>): Promise<number> {
  const made = makeFolder(folder);
  if (readNames(folder).length > 0) {
    throw new ServerError('tool-wrong', `${folder} is not empty: name a folder of its own for each backup.`);
  }
  try {
    return await fill();
  } catch (error) {
    for (const name of readNames(folder)) rmSync(join(folder, name), { recursive: true, force: true });
    if (made !== undefined) rmSync(made, { recursive: true, force: true });
    throw asCopyError(error, folder);
  }
}

const asCopyError = (error: unknown, folder: string): unknown =>
  isOfTheDisk(error) ? new ServerError('data-unwritable', folder, error) : error;

function readNames(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    throw new ServerError('data-unwritable', folder, error);
  }
}

/** Where a path leads, also one at whose end nothing stands yet. */
function realPath(path: string): string {
  const whole = resolve(path);
  if (existsSync(whole) || dirname(whole) === whole) return realpathSync(whole);
  return join(realPath(dirname(whole)), whole.slice(dirname(whole).length));
}

function copyBeside(from: string, to: string, name: string): void {
  if (existsSync(join(from, name))) copyFileSync(join(from, name), join(to, name));
}

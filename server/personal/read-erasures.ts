import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { isFolderInUse } from '../heads/folder-lock.ts';
import type { PersonalStore } from './personal-store.ts';
import { PERSONAL_FILE } from './sqlite-personal-store.ts';

interface ErasedKey {
  readonly company: string;
  readonly visit: string;
  readonly erased_at: number;
}

/**
 * What was erased of the visits in a data folder, a sentence a visit. It leaves the folder as it is: where no server
 * writes, a copy in a folder for what is passing is read, since SQLite puts a log beside a file that it opens.
 */
export function erasureWords(folder: string): readonly string[] {
  const path = join(folder, PERSONAL_FILE);
  if (!existsSync(path)) return [];
  const passing = isFolderInUse(folder) ? undefined : mkdtempSync(join(tmpdir(), 'readback-'));
  try {
    const database = new SQLite(passing === undefined ? path : copied(path, passing), {
      readonly: passing === undefined,
      fileMustExist: true,
    });
    try {
      const erased = database.prepare<[], ErasedKey>(
        'SELECT company, visit, max(erased_at) AS erased_at FROM visit_key WHERE erased_at IS NOT NULL GROUP BY company, visit ORDER BY company, visit',
      );
      return erased.all().map(({ company, visit, erased_at: at }) => erasedSentence(company, visit, at));
    } finally {
      database.close();
    }
  } finally {
    if (passing !== undefined) rmSync(passing, { recursive: true, force: true });
  }
}

/** The same of a database. */
export async function erasureWordsOf(store: Pick<PersonalStore, 'erasures'>): Promise<readonly string[]> {
  const latest = new Map<string, { readonly company: string; readonly visit: string; readonly at: number }>();
  for (const { company, visit, erasedAt = 0 } of await store.erasures()) {
    const name = `${company}/${visit}`;
    latest.set(name, { company, visit, at: Math.max(erasedAt, latest.get(name)?.at ?? 0) });
  }
  return [...latest.values()].map(({ company, visit, at }) => erasedSentence(company, visit, at));
}

/** @param at in milliseconds since 1970 */
function erasedSentence(company: string, visit: string, at: number): string {
  const day = new Date(at).toISOString().slice(0, 10);
  return `${company}, visit ${visit}: what is personal was erased on ${day}; its events stand as they were written.`;
}

function copied(path: string, to: string): string {
  const copy = join(to, PERSONAL_FILE);
  for (const end of ['', '-wal']) if (existsSync(`${path}${end}`)) copyFileSync(`${path}${end}`, `${copy}${end}`);
  return copy;
}

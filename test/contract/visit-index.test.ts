import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, describe, expect, test } from 'vitest';
import { openSqliteVisitIndex } from '../../server/store/sqlite-visit-index.ts';
import { scratchFolder } from '../server/built-server.ts';
import { briefOf, visitIndexContract } from './visit-index-contract.ts';

const scratch = scratchFolder();
const path = join(scratch.path, 'visit-index.sqlite');
let index = await openSqliteVisitIndex(path);
afterAll(async () => {
  await index.close();
  scratch.remove();
});

visitIndexContract(
  'SQLite',
  () => index,
  async () => {
    await index.close();
    index = await openSqliteVisitIndex(path);
  },
);

describe('an index that cannot be used', () => {
  const filled = async (name: string) => {
    const file = join(scratch.path, name);
    const opened = await openSqliteVisitIndex(file);
    await opened.put('local', briefOf());
    await opened.close();
    return file;
  };
  const heldIn = async (file: string) => {
    const opened = await openSqliteVisitIndex(file);
    const held = await opened.held();
    await opened.put('local', briefOf());
    expect(await opened.held()).toHaveLength(held.length + 1);
    await opened.close();
    return held;
  };

  test('because it is no database is thrown away and begun anew', async () => {
    const file = await filled('text.sqlite');
    writeFileSync(file, 'not a database, and longer than the head of one would be '.repeat(20));
    expect(await heldIn(file)).toEqual([]);
    expect(await heldIn(file)).toHaveLength(1);
  });

  test('because it was cut is begun anew', async () => {
    const file = await filled('cut.sqlite');
    writeFileSync(file, readFileSync(file).subarray(0, 9_000));
    expect(await heldIn(file)).toEqual([]);
  });

  test('because another version wrote it is begun anew', async () => {
    const file = await filled('other.sqlite');
    const database = new SQLite(file);
    database.pragma('user_version = 9');
    database.close();
    expect(await heldIn(file)).toEqual([]);
  });

  test('because nothing can be written there is kept in memory', async () => {
    expect(await heldIn(join(scratch.path, 'no', 'such', 'folder.sqlite'))).toEqual([]);
  });
});

import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PersonalStore } from '../../server/personal/personal-store.ts';
import { openSqlitePersonalStore } from '../../server/personal/sqlite-personal-store.ts';
import { scratchFolder } from '../server/built-server.ts';
import { personalContract } from './personal-contract.ts';

const scratch = scratchFolder();
const path = join(scratch.path, 'personal.sqlite');
let store: PersonalStore;
beforeAll(async () => {
  store = await openSqlitePersonalStore(path);
});
afterAll(async () => {
  await store.close();
  scratch.remove();
});

personalContract(
  'SQLite',
  () => store,
  async () => {
    await store.close();
    store = await openSqlitePersonalStore(path);
  },
);

describe('SQLite: the file of what is personal', () => {
  test('holds no byte of a key or sound that was erased, nor does its log', async () => {
    const file = join(scratch.path, 'forgets.sqlite');
    const forgetting = await openSqlitePersonalStore(file);
    const [key, sound] = [randomBytes(32), randomBytes(200_000)];
    const of = { company: 'c', visit: 'v', sha256: 'a'.repeat(64) };
    await forgetting.addKey({ ...of, device: 'd', key, createdAt: 1, erasedAt: undefined });
    await forgetting.beginAttachment({ ...of, device: 'd', kind: 'sound', media: 'audio/wav', bytes: sound.length });
    await forgetting.addPart(of, 0, sound);
    const bytes = () =>
      Buffer.concat([file, `${file}-wal`].filter((one) => existsSync(one)).map((one) => readFileSync(one)));
    const marks = [key, sound.subarray(0, 64), sound.subarray(100_000, 100_064)];
    for (const mark of marks) expect(bytes().includes(mark)).toBe(true);
    await forgetting.eraseVisit('c', 'v', ['d'], 2);
    for (const mark of marks) expect(bytes().includes(mark)).toBe(false);
    await forgetting.close();
    for (const mark of marks) expect(bytes().includes(mark)).toBe(false);
  });

  test.each([
    ['of another program', 'data-foreign', 'PRAGMA application_id = 7'],
    ['of a newer version', 'data-newer', 'PRAGMA user_version = 99'],
  ])('%s is not opened', async (_what, code, sql) => {
    const file = join(scratch.path, `${code}.sqlite`);
    await (await openSqlitePersonalStore(file)).close();
    const database = new SQLite(file);
    database.exec(sql);
    database.close();
    await expect(openSqlitePersonalStore(file)).rejects.toMatchObject({ code });
  });
});

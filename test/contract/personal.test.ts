import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import SQLite from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SizeLimit } from '../../server/database/size-limit.ts';
import type { PersonalStore } from '../../server/personal/personal-store.ts';
import { createPersonalTables, type PersonalTables } from '../../server/personal/personal-tables.ts';
import { openSqlitePersonalStore } from '../../server/personal/sqlite-personal-store.ts';
import { buildRoom, scratchFolder } from '../server/built-server.ts';
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
    const of = { company: 'c', visit: 'v', device: 'd', sha256: 'a'.repeat(64) };
    await forgetting.addKey({ ...of, key, createdAt: 1, erasedAt: undefined });
    await forgetting.beginAttachment({ ...of, kind: 'sound', media: 'audio/wav', bytes: sound.length });
    await forgetting.addPart(of, 0, sound);
    const bytes = () =>
      Buffer.concat([file, `${file}-wal`].filter((one) => existsSync(one)).map((one) => readFileSync(one)));
    const marks = [key, sound.subarray(0, 64), sound.subarray(100_000, 100_064)];
    for (const mark of marks) expect(bytes().includes(mark)).toBe(true);
    await forgetting.eraseVisit('c', 'v', ['d'], 2);
    expect(await forgetting.overwriteErased()).toEqual([]);
    for (const mark of marks) expect(bytes().includes(mark)).toBe(false);
    await forgetting.close();
    for (const mark of marks) expect(bytes().includes(mark)).toBe(false);
  });

  test('of the first version is brought up to date: what it held is there, each file of the device that sent it', async () => {
    const file = join(scratch.path, 'older.sqlite');
    const older = new SQLite(file);
    const db = new Kysely<PersonalTables>({ dialect: new SqliteDialect({ database: older }) });
    await createPersonalTables(db, 'blob');
    older.exec(`PRAGMA application_id = 0x52424b31; PRAGMA user_version = 1;
      INSERT INTO visit_key VALUES ('c', 'v', 'phone', x'0102', 3, NULL), ('c', 'gone', 'phone', NULL, 3, 4);
      INSERT INTO attachment VALUES ('c', 'v', 'aa', 'phone', 'sound', 'audio/wav', 5, 5, 6, NULL),
        ('c', 'v', 'bb', 'tablet', 'photo', 'image/png', 9, 1, NULL, NULL);
      INSERT INTO attachment_part VALUES ('c', 'v', 'aa', 0, x'ff00'), ('c', 'v', 'aa', 2, x'010203'), ('c', 'v', 'bb', 0, x'07')`);
    await db.destroy();
    for (const again of [false, true]) {
      const brought = await openSqlitePersonalStore(file);
      expect(await brought.keys('c', 'v')).toMatchObject([{ key: new Uint8Array([1, 2]), createdAt: 3 }]);
      expect(await brought.isErased('c', 'gone')).toBe(true);
      expect(await brought.attachments('c', 'v')).toEqual([
        {
          ...{ company: 'c', visit: 'v', sha256: 'aa', device: 'phone', kind: 'sound', media: 'audio/wav' },
          ...{ bytes: 5, held: 5, receivedAt: 6, erasedAt: undefined },
        },
        {
          ...{ company: 'c', visit: 'v', sha256: 'bb', device: 'tablet', kind: 'photo', media: 'image/png' },
          ...{ bytes: 9, held: again ? 2 : 1, receivedAt: undefined, erasedAt: undefined },
        },
      ]);
      const name = { company: 'c', visit: 'v', sha256: 'aa', device: 'phone' };
      expect([...(await brought.data(name))]).toEqual([255, 0, 1, 2, 3]);
      expect([...(await brought.data({ ...name, sha256: 'bb', device: 'tablet' }))]).toEqual(again ? [7, 8] : [7]);
      if (!again)
        expect(await brought.addPart({ ...name, sha256: 'bb', device: 'tablet' }, 1, new Uint8Array([8]))).toBe(true);
      await brought.close();
    }
  });

  test.each(['new', 'older'])('%s, and opened by two programs at once, is made once', async (which) => {
    const program = pathToFileURL(buildRoom('server', 'personal/sqlite-personal-store.js')).href;
    for (let round = 0; round < 3; round += 1) {
      const file = join(scratch.path, `${which}-${round}.sqlite`);
      if (which === 'older') {
        const older = new SQLite(file);
        const db = new Kysely<PersonalTables>({ dialect: new SqliteDialect({ database: older }) });
        await createPersonalTables(db, 'blob');
        older.exec('PRAGMA application_id = 0x52424b31; PRAGMA user_version = 1; PRAGMA journal_mode = WAL');
        await db.destroy();
      }
      const script = `const { openSqlitePersonalStore } = await import(${JSON.stringify(program)});
        while (Date.now() < ${Date.now() + 1_500}) {}
        await (await openSqlitePersonalStore(${JSON.stringify(file)})).close();`;
      const ends = [1, 2, 3].map(
        () =>
          new Promise((resolve) => {
            const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
              stdio: ['ignore', 'ignore', 'pipe'],
            });
            let said = '';
            child.stderr.on('data', (text) => {
              said += text;
            });
            child.once('close', (status) => resolve([status, said]));
          }),
      );
      expect(await Promise.all(ends)).toEqual([1, 2, 3].map(() => [0, '']));
    }
  });

  test('ends where the record leaves no room, and erases all the same', async () => {
    const limit = new SizeLimit(400_000);
    const other = new SQLite(join(scratch.path, 'other.sqlite'));
    const grow = limit.held(other, () => other.exec('CREATE TABLE big (data)'));
    grow();
    const held = await openSqlitePersonalStore(join(scratch.path, 'held.sqlite'), limit);
    const of = { company: 'c', visit: 'v', device: 'd', sha256: 'a'.repeat(64) };
    await held.addKey({ ...of, key: randomBytes(32), createdAt: 1, erasedAt: undefined });
    await held.beginAttachment({ ...of, kind: 'sound', media: 'audio/wav', bytes: 900_000 });
    expect(await held.addPart(of, 0, randomBytes(200_000))).toBe(true);
    await expect(held.addPart(of, 200_000, randomBytes(200_000))).rejects.toMatchObject({ code: 'data-full' });
    expect((await held.data(of)).length).toBe(200_000);
    // What is here takes from what the other may have, and the other way round.
    const fill = limit.held(other, (bytes: number) => other.prepare('INSERT INTO big VALUES (zeroblob(?))').run(bytes));
    expect(() => fill(250_000)).toThrow('full');
    fill(120_000);
    await expect(held.addPart(of, 200_000, randomBytes(50_000))).rejects.toMatchObject({ code: 'data-full' });
    expect(
      await held.eraseVisit('c', 'v', ['d', ...Array.from({ length: 400 }, (_, at) => `device-${at}`)], 2),
    ).toEqual({
      keys: 1,
      files: 1,
    });
    expect(await held.overwriteErased()).toEqual([]);
    await held.close();
    other.close();
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

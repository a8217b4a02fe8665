import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { NOT_READABLE } from '../../grammar/visit/personal.ts';
import { openDatabase } from '../../server/heads/open-database.ts';
import { verifyDatabase } from '../../server/heads/verify-database.ts';
import type { Retention } from '../../server/personal/personal.ts';
import { openSqliteVisitIndex } from '../../server/store/sqlite-visit-index.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from './own-postgres.ts';
import { type RunningApp, runApp } from './running-app.ts';
import { LIBRARY, LIBRARY_SITE, type WrittenVisit, writeBodies, writeSealed } from './write-visit.ts';

const programs = await postgresPrograms();
const missing = 'missing' in programs ? programs.missing : undefined;

describe.skipIf(missing !== undefined)(
  `what is personal in a database, by hand${missing === undefined ? '' : `: ${missing}`}`,
  () => {
    const scratch = scratchFolder();
    const indexPath = join(scratch.path, 'visit-index.sqlite');
    let program: string;
    let postgres: OwnPostgres;
    let url: string;
    let server: RunningApp;
    let one: WrittenVisit;
    beforeAll(async () => {
      program = buildServer();
      postgres = await startOwnPostgres(programs);
      url = await postgres.database();
      const index = await openSqliteVisitIndex(indexPath);
      server = await runApp({ ...(await openDatabase(url, { acceptLoss: false })), index });
      one = await writeSealed(server.url, 'one', LIBRARY_SITE);
      await writeSealed(server.url, 'two', LIBRARY_SITE);
      await writeSealed(server.url, 'else', '9 Other Street');
    }, 120_000);
    afterAll(async () => {
      await server?.stop();
      await postgres?.remove();
      scratch.remove();
    });

    async function run(tool: string, args: readonly string[], environment: Readonly<Record<string, string>> = {}) {
      const path = program.replace('main.js', `tools/${tool}.js`);
      const child = spawn(process.execPath, [path, ...args], {
        // Neither names the folder where somebody keeps their own record.
        env: { ...process.env, DATABASE_URL: '', DATA_DIR: join(scratch.path, 'no-data'), ...environment },
      });
      let [stdout, stderr] = ['', ''];
      child.stdout.on('data', (text) => {
        stdout += text;
      });
      child.stderr.on('data', (text) => {
        stderr += text;
      });
      const status = await new Promise((resolve) => child.once('close', resolve));
      return { status, stdout, stderr };
    }
    const trail = async () =>
      (await getJson<{ lines: readonly { deed: string; detail: string }[] }>(`${server.url}/api/audit`)).lines.map(
        ({ deed, detail }) => `${deed}: ${detail}`,
      );
    const site = async (visit: string) =>
      (await getJson<{ site: string }>(`${server.url}/api/visits/${visit}/record.json`)).site;
    const named = async () =>
      (await getJson<{ visits: readonly { visit: string; site: string }[] }>(`${server.url}/api/list`)).visits
        .filter((listed) => listed.site === LIBRARY_SITE)
        .map(({ visit }) => visit)
        .toSorted();

    test('all of one customer is written out in the open, and nothing of others', async () => {
      const to = join(scratch.path, 'customer');
      expect(await run('export-customer', ['--database', url, '--site', LIBRARY_SITE, '--to', to])).toEqual({
        status: 0,
        stdout: `2 visits and 2 files in ${to}\n`,
        stderr: '',
      });
      expect(readdirSync(to).toSorted()).toEqual(['one', 'two']);
      expect(readFileSync(join(to, 'one', `${one.sha256}.wav`)).equals(one.sound)).toBe(true);
      expect(readFileSync(join(to, 'one', 'events.jsonl'), 'utf8')).toContain(LIBRARY_SITE);
      expect(await trail()).toContain('customer exported: two one');
      const again = join(scratch.path, 'again');
      expect(
        await run('export-customer', ['--site', LIBRARY_SITE, '--to', again], { DATABASE_URL: url }),
      ).toMatchObject({ status: 0, stdout: `2 visits and 2 files in ${again}\n` });
    });

    test('a visit is erased, and its servers are told; the database is verified and says so', async () => {
      await expect.poll(named, { timeout: 20_000 }).toEqual(['one', 'two']);
      expect(await run('erase', ['--database', url, '--visit', 'one', '--why', 'asked by the customer'])).toEqual({
        status: 0,
        stdout: 'Erased of one: 1 key and 1 file. Its events stand as they were written.\n',
        stderr: '',
      });
      expect(await site('one')).toBe(NOT_READABLE);
      await expect.poll(named, { timeout: 20_000 }).toEqual(['two']);
      expect(await trail()).toContain('visit erased: one asked by the customer');
      expect(await inDatabaseFiles(one.cipher.key)).toBe(false);
      const { findings, notes } = await verifyDatabase(url, []);
      expect(findings).toEqual([]);
      expect(notes).toEqual([expect.stringMatching(/^local, visit one: what is personal was erased on \d{4}-/)]);
      expect(await run('erase', ['--visit', 'two'], { DATABASE_URL: url })).toMatchObject({ status: 0 });
      expect(await site('two')).toBe(NOT_READABLE);
      expect(await site('else')).toBe('9 Other Street');
    });

    test('what was written in the open is counted', async () => {
      await writeBodies(server.url, 'open', LIBRARY);
      const { stdout } = await run('erase', ['--database', url, '--visit', 'open']);
      const [first, second, ...more] = stdout.trimEnd().split('\n');
      expect([first, more]).toEqual(['Erased of open: 0 keys and 0 files. Its events stand as they were written.', []]);
      expect(second).toMatch(/^Note: \d\d+ entries were written in the open: erasing does not reach what is personal /);
      expect(await site('open')).toBe(LIBRARY_SITE);
    });

    test('where this role may not have the tables written anew, the tool says what still lies there', async () => {
      const client = new pg.Client({ connectionString: url });
      await client.connect();
      await client.query(`CREATE ROLE clerk LOGIN; GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO clerk;
        GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO clerk`);
      await client.end();
      await expect.poll(() => inIndex('9 Other Street'), { timeout: 20_000 }).toBe(true);
      const { stdout, status } = await run('erase', [
        '--database',
        url.replace('readback@', 'clerk@'),
        '--visit',
        'else',
      ]);
      expect(status).toBe(0);
      // The server's own list forgets it, in its file as well.
      await expect.poll(() => inIndex('9 Other Street'), { timeout: 20_000 }).toBe(false);
      expect(stdout).toContain('Note: PostgreSQL says: permission denied to vacuum "visit_key"');
      expect(stdout).toContain("What was erased lies in the database's files until its owner runs VACUUM FULL.\n");
    });

    test('is kept for so many days: sounds go first, then what else is personal of a visit', async () => {
      const older = await postgres.database();
      const DAY = 86_400_000;
      const began = Date.now();
      const at = async (day: number, retention: Retention) => {
        const opened = await openDatabase(older, { acceptLoss: false });
        return runApp({ ...opened, retention, clock: () => began + day * DAY });
      };
      const first = await at(0, {});
      const { sha256, cipher } = await writeSealed(first.url, 'kept', LIBRARY_SITE);
      await first.stop();
      const told = async (day: number, retention: Retention) => {
        const app = await at(day, retention);
        const sound = (await fetch(`${app.url}/api/visits/kept/attachments/${sha256}`)).status;
        const record = await getJson<{ site: string }>(`${app.url}/api/visits/kept/record.json`);
        await app.stop();
        return [sound, record.site];
      };
      const retention = { soundDays: 10, personalDays: 20 };
      expect(await told(9, retention)).toEqual([200, LIBRARY_SITE]);
      expect(await told(11, retention)).toEqual([410, LIBRARY_SITE]);
      expect(await inDatabaseFiles(cipher.key, older)).toBe(true);
      expect(await told(21, retention)).toEqual([410, NOT_READABLE]);
      expect(await inDatabaseFiles(cipher.key, older)).toBe(false);
      expect((await verifyDatabase(older, [])).findings).toEqual([]);
    });

    test('wrong uses are one line, and nothing is begun', async () => {
      const line = async (tool: string, args: readonly string[], environment = {}) => {
        const { status, stdout, stderr } = await run(tool, args, environment);
        expect([status, stdout, stderr.trimEnd().split('\n').length]).toEqual([2, '', 1]);
        return stderr;
      };
      expect(await line('erase', ['--visit', 'v', '--data', 'x', '--database', url])).toContain('one or the other');
      expect(await line('erase', ['--visit', 'v', '--database', 'http://nowhere'])).toContain('postgres://');
      expect(await line('erase', ['--visit', 'nothing', '--database', url])).toContain('There is no visit "nothing"');
      const empty = await postgres.database();
      expect(await line('erase', ['--visit', 'v', '--database', empty])).toContain('holds no record');
      const to = join(scratch.path, 'erased');
      const erased = ['--site', NOT_READABLE, '--to', to, '--database', url];
      expect(await line('export-customer', erased)).toContain('is no customer');
      expect(existsSync(to)).toBe(false);
    });

    /** Whether words lie in the index's file or its log; from a copy, since closing the file would let go of its locks. */
    function inIndex(words: string): boolean {
      const copies = ['', '-wal'].map((end) => `${indexPath}${end}`).filter((path) => existsSync(path));
      return copies.some((path) => {
        spawnSync('cp', [path, `${path}.copy`]);
        return readFileSync(`${path}.copy`).includes(words);
      });
    }

    /** Whether the bytes lie in the file of the table of keys, as PostgreSQL reads it from the disk. */
    async function inDatabaseFiles(bytes: Buffer, database = url): Promise<boolean> {
      const client = new pg.Client({ connectionString: database });
      await client.connect();
      await client.query('CHECKPOINT');
      const read = "SELECT pg_read_binary_file(pg_relation_filepath('visit_key')) AS file";
      const { rows } = await client.query<{ readonly file: Buffer }>(read);
      await client.end();
      return rows[0]?.file.includes(bytes) === true;
    }
  },
);

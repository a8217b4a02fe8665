import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import pg from 'pg';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from '../server/own-postgres.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { startServer } from './readback-browser.ts';

/** SQL, and the values in it. */
type Question = readonly [text: string, values?: readonly unknown[]];

const DAY_MS = 86_400_000;

/** What a server keeps its record in, and what a test looks at there. */
export interface KeptStore {
  start(port?: number, environment?: Readonly<Record<string, string>>): Promise<LocalServer>;
  /** Runs a tool on it; what it prints. */
  run(tool: string, ...args: readonly string[]): string;
  /** Whether bytes lie in the files of the record, or of what is personal, on the disk. */
  holds(bytes: string | Buffer): Promise<boolean>;
  /** Has what was received look so many days older; the server is stopped. */
  age(days: number): Promise<void>;
  remove(): Promise<void>;
}

const runTool = (tool: string, args: readonly string[]) =>
  execFileSync(process.execPath, [join(PROJECT_ROOT, `.build/server/tools/${tool}.js`), ...args], { encoding: 'utf8' });

function inFolder(scratch: string): KeptStore {
  const data = join(scratch, 'data');
  let copies = 0;
  return {
    start: (port, environment) => startServer(data, port, environment),
    run: (tool, ...args) => runTool(tool, ['--data', data, ...args]),
    // From a copy: a process that closes a file of its own database loses its locks on it.
    holds: async (bytes) => {
      copies += 1;
      const copy = join(scratch, `copy-${copies}`);
      execFileSync('cp', ['-r', data, copy]);
      return readdirSync(copy)
        .filter((name) => /^(readback|personal)\.sqlite/.test(name))
        .some((name) => readFileSync(join(copy, name)).includes(bytes));
    },
    age: async (days) => {
      const database = new SQLite(join(data, 'personal.sqlite'));
      database.prepare('UPDATE attachment SET received_at = received_at - ?').run(days * DAY_MS);
      database.close();
    },
    remove: async () => undefined,
  };
}

async function inPostgres(scratch: string, own: OwnPostgres): Promise<KeptStore> {
  const url = await own.database();
  const asked = async <Row extends pg.QueryResultRow>(...questions: readonly Question[]) => {
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    const rows: Row[] = [];
    for (const [text, values = []] of questions) rows.push(...(await client.query<Row>(text, [...values])).rows);
    await client.end();
    return rows;
  };
  return {
    start: (port, environment) => startServer(join(scratch, 'data'), port, { ...environment, DATABASE_URL: url }),
    run: (tool, ...args) => runTool(tool, ['--database', url, ...args]),
    holds: async (bytes) => {
      const files = `SELECT pg_read_binary_file(pg_relation_filepath(oid)) AS file FROM pg_class
        WHERE relname IN ('event', 'visit_key', 'attachment', 'attachment_part')
          OR oid = (SELECT reltoastrelid FROM pg_class WHERE relname = 'attachment_part' AND relkind = 'r')`;
      const rows = await asked<{ readonly file?: Buffer }>(['CHECKPOINT'], [files]);
      return rows.some(({ file }) => file?.includes(bytes) === true);
    },
    age: async (days) => {
      await asked(['UPDATE attachment SET received_at = received_at - $1', [days * DAY_MS]]);
    },
    remove: () => own.remove(),
  };
}

/** In a folder, and in a PostgreSQL database where one can be had; where not, its name says so. */
export async function keptStores(): Promise<
  readonly { readonly name: string; readonly missing: boolean; make(scratch: string): Promise<KeptStore> }[]
> {
  const programs = await postgresPrograms();
  const missing = 'missing' in programs;
  return [
    { name: 'a folder', missing: false, make: async (scratch) => inFolder(scratch) },
    {
      name: `PostgreSQL${missing ? `: ${programs.missing}` : ''}`,
      missing,
      make: async (scratch) => inPostgres(scratch, await startOwnPostgres(programs)),
    },
  ];
}

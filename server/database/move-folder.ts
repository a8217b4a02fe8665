import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SQLite, { type Database } from 'better-sqlite3';
import type pg from 'pg';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import { GIVEN_UP_FILE, readGivenUp } from '../heads/given-up.ts';
import { namedLosses } from '../heads/keep-heads.ts';
import { openFolder } from '../heads/open-folder.ts';
import { lossesSince } from '../heads/take-head.ts';
import { PEOPLE_FILE, PEOPLE_TABLES } from '../people/sqlite-people-store.ts';
import { PERSONAL_FILE, PERSONAL_TABLES } from '../personal/sqlite-personal-store.ts';
import { checkVisit } from '../review/check-visit.ts';
import type { EventStore } from '../store/event-store.ts';
import { postgresReader } from '../store/postgres-reader.ts';
import { RECORD_FILE } from '../store/sqlite-store.ts';
import { KEY_FILE } from '../sync/receipt-signer.ts';
import { copyTable, digestOfFile, digestOfTable, tablesOf } from './copy-tables.ts';
import { bringUpToDate } from './migrations.ts';
import { inTransaction, openPostgres, type PostgresDatabase } from './open-postgres.ts';
import { readUpToDate } from './open-sqlite.ts';

/** What was taken over. */
export interface Moved {
  readonly events: number;
  readonly streams: number;
  readonly people: number;
  readonly devices: number;
  readonly heads: number;
  /** It was there already, as a move before left it. */
  readonly before: boolean;
  readonly database: string;
}

/**
 * Takes a data folder over into an empty PostgreSQL database: the record byte for byte with its numbers and times, signed
 * heads, what was given up, the key, people, devices and the trail, and what is personal: keys of visits, what was
 * erased, sounds and photos. All in one transaction: where it breaks off nothing of it is there, and it can be run again.
 * The folder stays as it is, but for a last head over all that it holds, and its tables brought up to this version.
 *
 * Before it is committed, each table is read back and held against the folder's by a hash over all rows, and each visit
 * is checked against its chains and the heads, there as here.
 *
 * @throws {ServerError} tool-wrong, where there is no record, or the database holds one; move-differs; folder-in-use and
 *   what opening the folder and the database throws.
 */
export async function moveFolder(folder: string, url: string): Promise<Moved> {
  if (!existsSync(join(folder, RECORD_FILE))) {
    throw new ServerError('tool-wrong', `There is no record in ${folder}: name a data folder.`);
  }
  const opened = await openFolder(folder, { acceptLoss: false });
  const record = new SQLite(join(folder, RECORD_FILE), { readonly: true });
  let database: PostgresDatabase | undefined;
  const passing = await mkdtemp(join(tmpdir(), 'readback-'));
  let beside: readonly Database[] = [];
  try {
    await opened.keeper.take();
    beside = await openBeside(folder, passing);
    database = await openPostgres(url);
    await bringUpToDate(database);
    return await take(database, folder, [record, ...beside], opened.store, opened.keeper.heads());
  } finally {
    await database?.close();
    for (const file of beside) file.close();
    await rm(passing, { recursive: true, force: true });
    record.close();
    await opened.keeper.close();
    await opened.store.close();
    opened.letGo();
  }
}

/** Which no server of the database may write meanwhile. */
const HELD = 'LOCK TABLE stream, event, said, head, signing_key, company, person IN EXCLUSIVE MODE';

function take(
  database: PostgresDatabase,
  folder: string,
  files: readonly Database[],
  store: EventStore,
  heads: readonly SignedHead[],
): Promise<Moved> {
  return inTransaction(database.pool, async (client) => {
    await client.query(HELD);
    const before = await isThere(client, database.name, heads);
    if (!before) await copyAll(client, folder, files, heads);
    for (const file of files) await compare(client, file);
    const { streams, events } = await checkAll(client, store, heads);
    const count = async (table: string) =>
      Number((await client.query<{ count: number }>(`SELECT count(*) FROM ${table}`)).rows[0]?.count);
    return {
      streams,
      events,
      people: await count('person'),
      devices: await count('device'),
      heads: await count('head'),
      before,
      database: database.name,
    };
  });
}

/** Opens the files beside the record, where there are any, to be read: their tables are copied as they are. */
async function openBeside(folder: string, passing: string): Promise<readonly Database[]> {
  const [people, personal] = [join(folder, PEOPLE_FILE), join(folder, PERSONAL_FILE)];
  return [
    ...(existsSync(people) ? [await readUpToDate(people, PEOPLE_TABLES, passing)] : []),
    ...(existsSync(personal) ? [await readUpToDate(personal, PERSONAL_TABLES, passing)] : []),
  ];
}

/** Whether this folder was taken over before. @throws {ServerError} tool-wrong, where there is anything else. */
async function isThere(client: pg.PoolClient, name: string, heads: readonly SignedHead[]): Promise<boolean> {
  const { rows } = await client.query<{ readonly line: string | null; readonly empty: boolean }>(`
    SELECT (SELECT line FROM head ORDER BY series DESC, number DESC LIMIT 1) AS line,
      NOT EXISTS (SELECT FROM stream) AND NOT EXISTS (SELECT FROM said) AND NOT EXISTS (SELECT FROM head)
        AND NOT EXISTS (SELECT FROM person) AND NOT EXISTS (SELECT FROM signing_key) AS empty`);
  const [found] = rows;
  if (found?.empty === true) return false;
  if (found?.line === JSON.stringify(heads.at(-1))) return true;
  throw new ServerError('tool-wrong', `The database ${name} holds a record already: name an empty one.`);
}

async function copyAll(
  client: pg.PoolClient,
  folder: string,
  files: readonly Database[],
  heads: readonly SignedHead[],
): Promise<void> {
  for (const file of files) {
    for (const table of tablesOf(file)) await copyTable(file, table, client);
  }
  for (const head of heads) {
    await client.query('INSERT INTO head (series, number, line) VALUES (1, $1, $2)', [
      head.number,
      JSON.stringify(head),
    ]);
  }
  for (const one of readGivenUp(join(folder, GIVEN_UP_FILE))) {
    await client.query('INSERT INTO given_up (line) VALUES ($1)', [JSON.stringify(one)]);
  }
  const pem = await readFile(join(folder, KEY_FILE), 'utf8');
  await client.query('INSERT INTO signing_key (pem, made_at) VALUES ($1, $2)', [pem, Date.now()]);
  await countOn(client);
}

/** Numbers that grow go on behind those that were copied. */
async function countOn(client: pg.PoolClient): Promise<void> {
  const { rows } = await client.query<{ readonly table: string; readonly column: string }>(`
    SELECT table_name AS table, column_name AS column FROM information_schema.columns
    WHERE table_schema = current_schema() AND column_default LIKE 'nextval%'`);
  for (const { table, column } of rows) {
    await client.query(
      `SELECT setval(pg_get_serial_sequence($1, $2), max("${column}")) FROM "${table}" HAVING max("${column}") > 0`,
      [table, column],
    );
  }
}

async function compare(client: pg.PoolClient, file: Database): Promise<void> {
  for (const table of tablesOf(file)) {
    if (digestOfFile(file, table) === (await digestOfTable(file, table, client))) continue;
    throw new ServerError('move-differs', `its table ${table}`);
  }
}

/** One connection answers one question after the other. */
function inTurn(client: pg.PoolClient): Pick<pg.PoolClient, 'query'> {
  let before: Promise<unknown> = Promise.resolve();
  const query = (text: string, values: unknown[]) => {
    const asked = before.then(() => client.query(text, values));
    before = asked.catch(() => undefined);
    return asked;
  };
  return { query } as Pick<pg.PoolClient, 'query'>;
}

const VISITS_A_PAGE = 1_000;

/** Checks every visit, here and there, against its chains and the heads: what is found must be the same. */
async function checkAll(
  client: pg.PoolClient,
  store: EventStore,
  heads: readonly SignedHead[],
): Promise<{ readonly streams: number; readonly events: number }> {
  const there = postgresReader(inTurn(client)) as EventStore;
  const ends = await there.ends();
  const companies = new Set([...ends, ...(await store.ends())].map(({ stream }) => stream.company));
  for (const company of companies) {
    for (let offset = 0; ; offset += VISITS_A_PAGE) {
      const visits = await store.visits(company, { limit: VISITS_A_PAGE, offset });
      for (const { visit } of visits) {
        const [ours, theirs] = [
          await checkVisit(store, company, visit, heads),
          await checkVisit(there, company, visit, heads),
        ];
        if (JSON.stringify(ours) !== JSON.stringify(theirs))
          throw new ServerError('move-differs', `the visit ${visit}`);
      }
      if (visits.length < VISITS_A_PAGE) break;
    }
  }
  const losses = await lossesSince(there, heads);
  if (losses.length > 0) throw new ServerError('move-differs', namedLosses(losses));
  return { streams: ends.length, events: ends.reduce((sum, { head }) => sum + head.seq, 0) };
}

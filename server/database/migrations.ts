import { type Kysely, type Migration, Migrator, sql } from 'kysely';
import { ServerError } from '../errors.ts';
import { createLeases, createPeopleTables, type PeopleTables } from '../people/people-tables.ts';
import { createPersonalTables, keepFilesByDevice, type PersonalTables } from '../personal/personal-tables.ts';
import { HEADS_TABLES, RECORD_TABLES } from '../store/postgres-tables.ts';
import { onlyGrows } from './only-grows.ts';
import type { PostgresDatabase } from './open-postgres.ts';
import type { ServerTables } from './server-tables.ts';

/**
 * What a PostgreSQL database is brought up to date by, in the order of the names. One that was ever released is never
 * changed: what comes later is another.
 */
const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-record': { up: (db) => run(db, RECORD_TABLES) },
  '0002-people': {
    up: async (db: Kysely<PeopleTables>) => {
      await createPeopleTables(db, 'postgres');
      await run(db, onlyGrows('audit'));
    },
  },
  '0003-heads': { up: (db) => run(db, HEADS_TABLES) },
  '0004-personal': { up: (db: Kysely<PersonalTables>) => createPersonalTables(db, 'bytea') },
  '0005-leases': {
    up: async (db: Kysely<PeopleTables>) => {
      await createLeases(db);
      await run(db, onlyGrows('lease_step'));
    },
  },
  '0006-files-by-device': { up: (db: Kysely<PersonalTables>) => keepFilesByDevice(db, 'bytea') },
};

/** Where kysely writes which of them were made. */
const TABLES = { migrationTableName: 'readback_migration', migrationLockTableName: 'readback_migration_lock' } as const;

async function run<Tables>(db: Kysely<Tables>, script: string): Promise<void> {
  await sql.raw(script).execute(db);
}

/**
 * Begins an empty database, brings an older one up to date (one of several servers that start at once does it, the others
 * wait), and leaves a foreign or newer one as it is.
 *
 * @param upTo for tests: the name of the last migration that is made
 * @returns what it was before
 * @throws {ServerError} database-foreign, database-newer, database-unreachable.
 */
export async function bringUpToDate(
  { db, name }: PostgresDatabase,
  upTo?: keyof typeof MIGRATIONS,
): Promise<'new' | 'ours' | 'older'> {
  const found = await identify(db, name);
  if (found === 'ours') return found;
  const migrator = new Migrator({ db, provider: { getMigrations: async () => MIGRATIONS }, ...TABLES });
  const { error } = await (upTo === undefined ? migrator.migrateToLatest() : migrator.migrateTo(upTo));
  if (error !== undefined) throw new ServerError('database-unreachable', name, error);
  return found;
}

/**
 * For what only reads.
 * @throws {ServerError} database-foreign, database-newer; tool-wrong, where a server has to bring it up to date first.
 */
export async function demandUpToDate({ db, name }: PostgresDatabase): Promise<void> {
  const found = await identify(db, name);
  if (found === 'ours') return;
  const why = found === 'new' ? 'holds no record' : 'is of an older version: start a server on it first';
  throw new ServerError('tool-wrong', `The database ${name} ${why}.`);
}

async function identify(db: Kysely<ServerTables>, name: string): Promise<'new' | 'ours' | 'older'> {
  const { rows } = await sql<{ table: string }>`
    SELECT relname AS "table" FROM pg_class WHERE relnamespace = current_schema()::regnamespace AND relkind IN ('r', 'v', 'm', 'p')
  `.execute(db);
  if (rows.length === 0) return 'new';
  if (!rows.some(({ table }) => table === TABLES.migrationTableName)) throw new ServerError('database-foreign', name);
  const made = await sql<{ name: string }>`SELECT name FROM ${sql.table(TABLES.migrationTableName)}`.execute(db);
  const names = new Set(made.rows.map((row) => row.name));
  for (const one of names) if (!(one in MIGRATIONS)) throw new ServerError('database-newer', name);
  if (names.size === 0) return 'new';
  return names.size === Object.keys(MIGRATIONS).length ? 'ours' : 'older';
}

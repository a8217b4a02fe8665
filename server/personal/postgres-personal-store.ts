import { sql } from 'kysely';
import type { PostgresDatabase } from '../database/open-postgres.ts';
import type { PersonalStore } from './personal-store.ts';
import { sqlPersonalStore } from './sql-personal-store.ts';

/** A server that reads keys meanwhile is waited for so long. */
const LOCK_WITHIN = '30s';

/**
 * How each table is rid of what was erased. A plain VACUUM takes a row out of use and leaves its bytes where they stood:
 * keys are written anew without those that are gone, and what they sealed is unreadable then.
 */
const OVERWRITING = ['VACUUM (FULL, VERBOSE) visit_key', 'VACUUM (VERBOSE) attachment, attachment_part'] as const;

interface Notice {
  readonly severity?: string | undefined;
  readonly message?: string | undefined;
  readonly detail?: string | undefined;
}

/**
 * What is personal in a PostgreSQL database that is up to date.
 * @param close where the database is not closed by another
 */
export function postgresPersonalStore(
  database: PostgresDatabase,
  close: () => Promise<void> = async () => undefined,
): PersonalStore {
  return sqlPersonalStore(database.db, {
    overwriteErased: () => overwriteErased(database),
    holdWriters: async (within) => {
      await sql`LOCK TABLE visit_key, attachment, attachment_part IN SHARE ROW EXCLUSIVE MODE`.execute(within);
    },
    close,
  });
}

async function overwriteErased(database: PostgresDatabase): Promise<readonly string[]> {
  const left: string[] = [];
  try {
    const client = await database.connect('readback erasing');
    try {
      client.on('notice', (notice) => {
        const one = told(notice);
        if (one !== undefined) left.push(one);
      });
      await client.query(`SET lock_timeout = '${LOCK_WITHIN}'`);
      for (const one of OVERWRITING) await client.query(one);
    } finally {
      await client.end().catch(() => undefined);
    }
  } catch (error) {
    left.push(`PostgreSQL did not vacuum (${(error as Error).message}).`);
  }
  return left.map((one) => `${one} What was erased lies in the database's files until its owner runs VACUUM FULL.`);
}

/** A warning, such as that this role may not; or rows that somebody's older transaction could still read. */
function told({ severity, message = '', detail = '' }: Notice): string | undefined {
  if (severity === 'WARNING') return `PostgreSQL says: ${message}.`;
  const [, dead] = /^(\d+) dead row versions? cannot be removed yet/.exec(detail) ?? [];
  if (dead === undefined || dead === '0') return undefined;
  return `An older transaction still sees ${dead} rows that are gone (a dump that runs, a session left open).`;
}

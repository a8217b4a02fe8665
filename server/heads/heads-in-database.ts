import type pg from 'pg';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { inTransaction, type PostgresDatabase } from '../database/open-postgres.ts';
import { parseGivenUp } from './given-up.ts';
import { checkHeads, parseHead } from './heads-file.ts';
import type { HeadsPlace } from './heads-place.ts';

/** "RBH1" in ASCII: what a server holds while it adds a head. */
const ADDING = 0x52424831;

/**
 * Heads in the tables of a PostgreSQL database, which all its servers share. No number of what was acknowledged stands
 * beside them: it would go back with the database where that is put back to an older state.
 */
export function headsInDatabase({ pool, name }: PostgresDatabase): HeadsPlace {
  return {
    name,
    read: async (signer) => checkHeads((await linesOf(pool)).map(parseHead), name, signer),
    add: (_known, next) =>
      inTransaction(pool, async (client) => {
        await client.query('SELECT pg_advisory_xact_lock($1::bigint)', [ADDING]);
        const heads = (await linesOf(client)).map((line) => parseHead(line) as SignedHead);
        const head = await next(heads);
        if (head === undefined) return heads;
        await client.query(
          'INSERT INTO head (series, number, line) SELECT coalesce(max(series), 1), $1, $2 FROM head',
          [head.number, JSON.stringify(head)],
        );
        return [...heads, head];
      }),
    setAside: async () => {
      // A series without a line of its own would be none.
      await pool.query("INSERT INTO head (series, number, line) SELECT max(series) + 1, 0, '' FROM head");
    },
    givenUp: async () => {
      const { rows } = await pool.query<{ readonly line: string }>('SELECT line FROM given_up ORDER BY id');
      return rows.flatMap(({ line }) => parseGivenUp(line));
    },
    giveUp: async (findings, time) => {
      const lines = findings.map((one) => JSON.stringify({ ...one, time }));
      await pool.query('INSERT INTO given_up (line) SELECT unnest($1::text[])', [lines]);
    },
    waterSentence: () => undefined,
    openWater: () => undefined,
  };
}

/** The lines of the latest series, in order. */
async function linesOf(client: pg.Pool | pg.PoolClient): Promise<readonly string[]> {
  const { rows } = await client.query<{ readonly line: string }>(
    'SELECT line FROM head WHERE series = (SELECT max(series) FROM head) AND number > 0 ORDER BY number',
  );
  return rows.map(({ line }) => line);
}

import type { StreamId } from '../../grammar/visit/envelope.ts';
import { checkGuards } from '../database/only-grows.ts';
import type { PostgresDatabase } from '../database/open-postgres.ts';
import type { EventStore } from './event-store.ts';
import { postgresReader } from './postgres-reader.ts';
import { postgresWriter } from './postgres-writer.ts';

export interface PostgresStore extends EventStore {
  /** Streams that hold fewer events than the number of their last: something in their middle is gone. */
  readonly withHoles: () => Promise<readonly StreamId[]>;
}

/**
 * The record in a PostgreSQL database that was brought up to date; several servers may have it open. Closing it leaves
 * the database open: whoever opened that closes it.
 * @throws {ServerError} database-changed.
 */
export async function openPostgresStore({ pool, name }: PostgresDatabase): Promise<PostgresStore> {
  await checkGuards(pool, name);
  return {
    ...postgresReader(pool),
    ...postgresWriter(pool),
    withHoles: async () => (await pool.query<StreamId>(HOLES)).rows,
    close: async () => undefined,
  };
}

const HOLES = `
SELECT company, visit, device, epoch FROM stream JOIN event ON event.stream = stream.id
GROUP BY stream.id HAVING count(*) <> max(seq)`;

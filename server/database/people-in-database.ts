import type { PeopleStore } from '../people/people-store.ts';
import { sqlPeopleStore } from '../people/sql-people-store.ts';
import { bringUpToDate } from './migrations.ts';
import { openPostgres } from './open-postgres.ts';

/**
 * The people of a PostgreSQL database, for a tool beside its servers; an empty one is begun.
 * @throws {ServerError} what opening the database throws.
 */
export async function openPeopleInDatabase(url: string): Promise<PeopleStore> {
  const database = await openPostgres(url);
  await bringUpToDate(database);
  return sqlPeopleStore(database.db, () => database.close());
}

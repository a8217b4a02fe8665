import { afterAll, beforeAll, describe } from 'vitest';
import { bringUpToDate } from '../../server/database/migrations.ts';
import { openPostgres, type PostgresDatabase } from '../../server/database/open-postgres.ts';
import type { PeopleStore } from '../../server/people/people-store.ts';
import { sqlPeopleStore } from '../../server/people/sql-people-store.ts';
import { openPostgresStore, type PostgresStore } from '../../server/store/postgres-store.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from '../server/own-postgres.ts';
import { peopleContract } from './people-contract.ts';
import { storeContract } from './store-contract.ts';

const programs = await postgresPrograms();
const missing = 'missing' in programs ? programs.missing : undefined;
const named = missing === undefined ? 'PostgreSQL' : `PostgreSQL: ${missing}`;

describe.skipIf(missing !== undefined)(named, () => {
  let server: OwnPostgres;
  let url: string;
  let database: PostgresDatabase;
  let store: PostgresStore;
  let people: PeopleStore;

  const open = async () => {
    database = await openPostgres(url);
    await bringUpToDate(database);
    store = await openPostgresStore(database);
    people = sqlPeopleStore(database.db, async () => undefined);
  };
  const reopen = async () => {
    await database.close();
    await open();
  };

  beforeAll(async () => {
    server = await startOwnPostgres(programs);
    url = await server.database();
    await open();
  });
  afterAll(async () => {
    await database?.close();
    await server?.remove();
  });

  storeContract(named, () => store, reopen);
  peopleContract(named, () => people, reopen);
});

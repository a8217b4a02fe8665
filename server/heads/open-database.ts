import type pg from 'pg';
import { bringUpToDate } from '../database/migrations.ts';
import { inTransaction, openPostgres, type PostgresDatabase } from '../database/open-postgres.ts';
import { ServerError } from '../errors.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { sqlPeopleStore } from '../people/sql-people-store.ts';
import type { PersonalStore } from '../personal/personal-store.ts';
import { postgresPersonalStore } from '../personal/postgres-personal-store.ts';
import { openPostgresStore, type PostgresStore } from '../store/postgres-store.ts';
import type { Peers } from '../sync/peers.ts';
import { PostgresPeers } from '../sync/postgres-peers.ts';
import { newKeyPem, type ReceiptSigner, signerOf } from '../sync/receipt-signer.ts';
import { checkChains } from './check-chains.ts';
import { headsInDatabase } from './heads-in-database.ts';
import { type HeadKeeper, keepHeads } from './keep-heads.ts';
import { CHAINS_MS, chainWords } from './open-folder.ts';

/** All that a server keeps, in one PostgreSQL database that it may share with other servers. */
export interface OpenedDatabase {
  readonly store: PostgresStore;
  readonly peopleStore: PeopleStore;
  readonly personalStore: PersonalStore;
  readonly signer: ReceiptSigner;
  readonly keeper: HeadKeeper;
  readonly peers: Peers;
  /** What whoever starts the server is to know. */
  readonly told: readonly string[];
}

/** "RBS1" in ASCII: what a server holds while it makes the key. */
const MAKING_KEY = 0x52425331;

/**
 * Opens a database for one of its servers, brings it up to date, and holds it against all that tells what it held.
 *
 * @throws {ServerError} database-unreachable, database-old, database-unsafe, database-foreign, database-newer,
 *   database-changed; data-lost, key-gone, key-lost, heads-damaged, unless a loss is accepted.
 */
export async function openDatabase(url: string, { acceptLoss }: { acceptLoss: boolean }): Promise<OpenedDatabase> {
  const database = await openPostgres(url);
  try {
    await bringUpToDate(database);
    const store = await openPostgresStore(database);
    const place = headsInDatabase(database);
    const signer = await openSigner(database, acceptLoss || (await store.lastArrival()) === 0);
    const chains = await checkChains(store, CHAINS_MS);
    const keeper = await keepHeads({ place, store, signer, clock: Date.now, acceptLoss, findings: chains.findings });
    const told = [
      `Records are kept in ${database.kept}`,
      ...keeper.givenUp.map((one) => `Given up: ${one}`),
      ...chainWords(chains),
    ];
    return {
      // It is closed last, and the database with it.
      store: { ...store, close: () => database.close() },
      peopleStore: sqlPeopleStore(database.db, async () => undefined),
      personalStore: postgresPersonalStore(database),
      signer,
      keeper,
      peers: new PostgresPeers(database),
      told,
    };
  } catch (error) {
    await database.close();
    throw error;
  }
}

/**
 * The key that all servers of a database sign with; made where there is none.
 * @throws {ServerError} key-gone, where the record has events and none may be made; key-damaged.
 */
async function openSigner({ pool, name }: PostgresDatabase, mayMake: boolean): Promise<ReceiptSigner> {
  return inTransaction(pool, async (client) => {
    await client.query('SELECT pg_advisory_xact_lock($1::bigint)', [MAKING_KEY]);
    const kept = await readSigner(client, name);
    if (kept !== undefined) return kept;
    if (!mayMake) throw new ServerError('key-gone', name);
    const pem = newKeyPem();
    await client.query('INSERT INTO signing_key (pem, made_at) VALUES ($1, $2)', [pem, Date.now()]);
    return signerOf(pem, name);
  });
}

/**
 * The key that the servers of a database sign with; undefined where none was made.
 * @throws {ServerError} key-damaged.
 */
export function signerInDatabase({ pool, name }: PostgresDatabase): Promise<ReceiptSigner | undefined> {
  return readSigner(pool, name);
}

async function readSigner(client: Pick<pg.Pool, 'query'>, name: string): Promise<ReceiptSigner | undefined> {
  const { rows } = await client.query<{ readonly pem: string }>('SELECT pem FROM signing_key ORDER BY id DESC LIMIT 1');
  return rows[0] === undefined ? undefined : signerOf(rows[0].pem, name);
}

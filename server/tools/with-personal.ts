import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import { readDatabaseUrl } from '../configuration.ts';
import { demandUpToDate } from '../database/migrations.ts';
import { openPostgres } from '../database/open-postgres.ts';
import { ServerError } from '../errors.ts';
import { signerInDatabase } from '../heads/open-database.ts';
import { readRecord } from '../heads/read-folder.ts';
import { Auditor } from '../people/auditor.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { sqlPeopleStore } from '../people/sql-people-store.ts';
import { openSqlitePeopleStore, PEOPLE_FILE } from '../people/sqlite-people-store.ts';
import type { PersonalStore } from '../personal/personal-store.ts';
import { postgresPersonalStore } from '../personal/postgres-personal-store.ts';
import { openSqlitePersonalStore, PERSONAL_FILE } from '../personal/sqlite-personal-store.ts';
import { IndexKeeper } from '../review/index-keeper.ts';
import type { EventStore } from '../store/event-store.ts';
import { postgresReader } from '../store/postgres-reader.ts';
import { sqliteReader } from '../store/sqlite-reader.ts';
import { INDEX_FILE, openSqliteVisitIndex } from '../store/sqlite-visit-index.ts';
import { VisitActivity } from '../store/visit-activity.ts';
import { PostgresPeers } from '../sync/postgres-peers.ts';
import { KEY_FILE, openReceiptSigner, type ReceiptSigner } from '../sync/receipt-signer.ts';

/** Options by which such a tool is told where to work. */
export const PLACE_OPTIONS = ['company', 'data', 'database'] as const;
/** The lines of its help for them. */
export const PLACE_HELP = `  --data FOLDER      the server's data folder (./data); the server may run
  --database URL     a PostgreSQL database (DATABASE_URL) in place of a folder; servers may run`;

interface OpenedRecord {
  readonly events: Pick<EventStore, 'events' | 'streams' | 'visits' | 'ends'>;
  readonly personal: PersonalStore;
  readonly people: PeopleStore;
  /** The server's key, as far as it is there: what it signed. */
  readonly signer: Pick<ReceiptSigner, 'verifies'>;
  /** Takes the words of a visit that was erased out of the lists, or has the servers do so. */
  readonly forget: (company: string, visit: string) => Promise<void>;
}

/** A record as a tool opens it, which may do so beside its servers: the events to read, what is personal to change. */
export interface OpenedPersonal extends OpenedRecord {
  readonly auditor: Auditor;
  readonly company: string;
  /** Who does it: stands on the trail. */
  readonly by: { readonly company: string; readonly person: string };
}

/** Where the key is gone nothing can be told of what it signed. */
const NO_SIGNER: Pick<ReceiptSigner, 'verifies'> = { verifies: () => false };

type Options = Readonly<Record<string, string | undefined>>;
type Work<Result> = (opened: OpenedPersonal) => Promise<Result>;

/**
 * Opens record, people and what is personal of the database or the folder that the options name, else of the database
 * that DATABASE_URL names, else of the folder that a server would take; closes them behind the work.
 * @throws {ServerError} tool-wrong, where there is no record, and what opening throws.
 */
export function withPersonal<Result>(tool: string, options: Options, work: Work<Result>): Promise<Result> {
  const { data, database, company = LOCAL_COMPANY } = options;
  if (data !== undefined && database !== undefined) {
    throw new ServerError(
      'tool-wrong',
      `--data and --database are one or the other: see "npm run -s ${tool} -- --help".`,
    );
  }
  const told = async (opened: OpenedRecord) => {
    const auditor = new Auditor(opened.people, Date.now);
    try {
      return await work({ ...opened, auditor, company, by: { company, person: `npm run ${tool}` } });
    } finally {
      await auditor.close();
    }
  };
  const { databaseUrl } =
    data === undefined ? readDatabaseUrl({ DATABASE_URL: database ?? process.env['DATABASE_URL'] }) : {};
  return databaseUrl === undefined
    ? inFolder(data ?? process.env['DATA_DIR'] ?? 'data', told)
    : inDatabase(databaseUrl, told);
}

type Told<Result> = (opened: OpenedRecord) => Promise<Result>;

function inFolder<Result>(folder: string, told: Told<Result>): Promise<Result> {
  return readRecord(folder, async ({ database }) => {
    const events = sqliteReader(database, VisitActivity.of(database));
    const personal = await openSqlitePersonalStore(join(folder, PERSONAL_FILE));
    const people = await openSqlitePeopleStore(join(folder, PEOPLE_FILE));
    const key = join(folder, KEY_FILE);
    const signer = existsSync(key) ? openReceiptSigner(key) : NO_SIGNER;
    const forget = async (company: string, visit: string) => {
      const path = join(folder, INDEX_FILE);
      if (!existsSync(path)) return;
      const keeper = new IndexKeeper(events, await openSqliteVisitIndex(path), { keys: personal, people, signer });
      await keeper.forget({ company, visit });
      await keeper.level(company);
      await keeper.close();
    };
    try {
      return await told({ events, personal, people, signer, forget });
    } finally {
      await people.close();
      await personal.close();
    }
  });
}

async function inDatabase<Result>(url: string, told: Told<Result>): Promise<Result> {
  const database = await openPostgres(url);
  try {
    await demandUpToDate(database);
    const peers = new PostgresPeers(database);
    const forget = async (company: string, visit: string) => {
      peers.grown([{ company, visit }]);
      await peers.close();
    };
    const events = postgresReader(database.pool);
    const people = sqlPeopleStore(database.db, async () => undefined);
    const signer = (await signerInDatabase(database)) ?? NO_SIGNER;
    return await told({ events, personal: postgresPersonalStore(database), people, signer, forget });
  } finally {
    await database.close();
  }
}

import { type Generated, type Kysely, sql } from 'kysely';
import { type Engine, growingNumber } from '../database/engine.ts';

/** The tables as the queries see them. Every column is text or a whole number, so that any SQL database holds them alike. */
export interface PeopleTables {
  company: { company: string; name: string; created_at: number };
  person: {
    person: string;
    company: string;
    login: string;
    name: string;
    role: string;
    password: string | null;
    created_at: number;
    removed_at: number | null;
  };
  device: {
    device: string;
    company: string;
    person: string;
    public_key: string;
    paired_at: number;
    revoked_at: number | null;
  };
  session: {
    hash: string;
    company: string;
    person: string;
    by: string;
    created_at: number;
    last_used_at: number;
  };
  code: {
    hash: string;
    kind: string;
    company: string;
    person: string;
    detail: string;
    expires_at: number;
    used: number;
  };
  passkey: {
    id: string;
    company: string;
    person: string;
    public_key: string;
    counter: number;
    created_at: number;
  };
  /** The last lease of visits that were taken over before all were kept. Nothing is added to it. */
  lease: { company: string; visit: string; device: string; person: string; taken_at: number };
  /** `behind` is JSON. Number 0 is the device that opened the visit, kept with the first that was given on. It only grows. */
  lease_step: {
    company: string;
    visit: string;
    number: number;
    device: string;
    person: string;
    taken_at: number;
    behind: string;
  };
  attempt: { key: string; since: number; count: number };
  audit: {
    id: Generated<number>;
    at: number;
    company: string;
    person: string;
    device: string;
    deed: string;
    outcome: string;
    detail: string;
    times: number;
  };
}

/** Makes all tables, in the words of the database that is to hold them. */
export async function createPeopleTables(db: Kysely<PeopleTables>, engine: Engine): Promise<void> {
  const { schema } = db;
  await schema
    .createTable('company')
    .addColumn('company', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .execute();
  await schema
    .createTable('person')
    .addColumn('person', 'text', (column) => column.primaryKey())
    .addColumn('company', 'text', (column) => column.notNull().references('company.company'))
    .addColumn('login', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('password', 'text')
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .addColumn('removed_at', 'bigint')
    .execute();
  // A name is free again when its owner is removed.
  await schema
    .createIndex('person_login')
    .on('person')
    .column('login')
    .unique()
    .where(sql.ref('removed_at'), 'is', null)
    .execute();
  await schema
    .createTable('device')
    .addColumn('device', 'text', (column) => column.primaryKey())
    .addColumn('company', 'text', (column) => column.notNull().references('company.company'))
    .addColumn('person', 'text', (column) => column.notNull().references('person.person'))
    .addColumn('public_key', 'text', (column) => column.notNull())
    .addColumn('paired_at', 'bigint', (column) => column.notNull())
    .addColumn('revoked_at', 'bigint')
    .execute();
  await schema
    .createTable('session')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('person', 'text', (column) => column.notNull().references('person.person'))
    .addColumn('by', 'text', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .addColumn('last_used_at', 'bigint', (column) => column.notNull())
    .execute();
  await schema
    .createTable('code')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('person', 'text', (column) => column.notNull())
    .addColumn('detail', 'text', (column) => column.notNull())
    .addColumn('expires_at', 'bigint', (column) => column.notNull())
    .addColumn('used', 'integer', (column) => column.notNull())
    .execute();
  await schema
    .createTable('passkey')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('person', 'text', (column) => column.notNull().references('person.person'))
    .addColumn('public_key', 'text', (column) => column.notNull())
    .addColumn('counter', 'bigint', (column) => column.notNull())
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .execute();
  await schema
    .createTable('attempt')
    .addColumn('key', 'text', (column) => column.primaryKey())
    .addColumn('since', 'bigint', (column) => column.notNull())
    .addColumn('count', 'integer', (column) => column.notNull())
    .execute();
  await schema
    .createTable('audit')
    .addColumn('id', growingNumber(engine), (column) => column.primaryKey())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('person', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('deed', 'text', (column) => column.notNull())
    .addColumn('outcome', 'text', (column) => column.notNull())
    .addColumn('detail', 'text', (column) => column.notNull())
    .addColumn('times', 'integer', (column) => column.notNull())
    .execute();
  await schema.createIndex('audit_company').on('audit').columns(['company', 'id']).execute();
}

/** Leases are of a later version than the other tables; one between them held the last lease of a visit alone. */
export async function createLeases(db: Kysely<PeopleTables>): Promise<void> {
  await db.schema
    .createTable('lease')
    .ifNotExists()
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('person', 'text', (column) => column.notNull())
    .addColumn('taken_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('lease_of_visit', ['company', 'visit'])
    .execute();
  await db.schema
    .createTable('lease_step')
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('person', 'text', (column) => column.notNull())
    .addColumn('taken_at', 'bigint', (column) => column.notNull())
    .addColumn('behind', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('lease_step_of', ['company', 'visit', 'number'])
    .execute();
}

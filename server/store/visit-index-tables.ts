import type { Generated, Kysely } from 'kysely';

/** The tables of the index as its queries see them. Times in milliseconds since 1970; yes is 1. */
export interface IndexTables {
  brief: {
    id: Generated<number>;
    company: string;
    visit: string;
    opened_at: number;
    last_at: number;
    events: number;
    /** 0 where its devices said no more than is held. */
    said: number;
    device: string;
    closed: number;
    site: string;
    /** Site and serial number as they are compared: small letters and digits alone. */
    site_key: string;
    serial_key: string;
    technician: string;
    /** Empty where none was stated. */
    finding: string;
    cautions_open: number;
    unproven: number;
    /** How many visits to the same unit were in the days before: from one on it is a repeat call. */
    before: number;
    /** What a list shows, and what the fleet counts beside it, as JSON. */
    shown: string;
    counted: string;
  };
  fitted: { company: string; part: string; brief: number };
  /** The words by which a visit is found, by its row: in SQLite a full-text table. */
  spoken: { rowid: number; words: string };
}

/** Makes the tables but for the full-text one, which each database has in words of its own. */
export async function createIndexTables({ schema }: Kysely<IndexTables>): Promise<void> {
  await schema
    .createTable('brief')
    .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('opened_at', 'bigint', (column) => column.notNull())
    .addColumn('last_at', 'bigint', (column) => column.notNull())
    .addColumn('events', 'integer', (column) => column.notNull())
    .addColumn('said', 'integer', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('closed', 'integer', (column) => column.notNull())
    .addColumn('site', 'text', (column) => column.notNull())
    .addColumn('site_key', 'text', (column) => column.notNull())
    .addColumn('serial_key', 'text', (column) => column.notNull())
    .addColumn('technician', 'text', (column) => column.notNull())
    .addColumn('finding', 'text', (column) => column.notNull())
    .addColumn('cautions_open', 'integer', (column) => column.notNull())
    .addColumn('unproven', 'integer', (column) => column.notNull())
    .addColumn('before', 'integer', (column) => column.notNull())
    .addColumn('shown', 'text', (column) => column.notNull())
    .addColumn('counted', 'text', (column) => column.notNull())
    .addUniqueConstraint('brief_of_visit', ['company', 'visit'])
    .execute();
  await schema
    .createTable('fitted')
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('part', 'text', (column) => column.notNull())
    .addColumn('brief', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('fitted_once', ['company', 'part', 'brief'])
    .execute();
  const index = (name: string, columns: readonly (keyof IndexTables['brief'])[]) =>
    schema
      .createIndex(name)
      .on('brief')
      .columns([...columns])
      .execute();
  await index('brief_by_activity', ['company', 'last_at']);
  await index('brief_by_serial', ['company', 'serial_key', 'opened_at']);
  await index('brief_by_site', ['company', 'site_key', 'opened_at']);
  await index('brief_by_repeat', ['company', 'before', 'last_at']);
  await index('brief_by_finding', ['company', 'finding']);
  await index('brief_by_technician', ['company', 'technician']);
  await schema.createIndex('fitted_by_brief').on('fitted').columns(['brief']).execute();
}

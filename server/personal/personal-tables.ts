import type { Kysely } from 'kysely';

/** The tables as the queries see them. Bytes are `blob` in SQLite; another database names its own type. */
export interface PersonalTables {
  visit_key: {
    company: string;
    visit: string;
    device: string;
    key: Uint8Array | null;
    created_at: number;
    erased_at: number | null;
  };
  attachment: {
    company: string;
    visit: string;
    sha256: string;
    device: string;
    kind: string;
    media: string;
    bytes: number;
    held: number;
    received_at: number | null;
    erased_at: number | null;
  };
  attachment_part: { company: string; visit: string; sha256: string; at: number; data: Uint8Array };
}

/** Makes all tables. @param bytes the database's type of bytes: `blob` in SQLite, `bytea` in PostgreSQL */
export async function createPersonalTables(db: Kysely<PersonalTables>, bytes: 'blob' | 'bytea'): Promise<void> {
  const { schema } = db;
  await schema
    .createTable('visit_key')
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('key', bytes)
    .addColumn('created_at', 'bigint', (column) => column.notNull())
    .addColumn('erased_at', 'bigint')
    .addPrimaryKeyConstraint('visit_key_of', ['company', 'visit', 'device'])
    .execute();
  await schema
    .createTable('attachment')
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('sha256', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('media', 'text', (column) => column.notNull())
    .addColumn('bytes', 'bigint', (column) => column.notNull())
    .addColumn('held', 'bigint', (column) => column.notNull())
    .addColumn('received_at', 'bigint')
    .addColumn('erased_at', 'bigint')
    .addPrimaryKeyConstraint('attachment_of', ['company', 'visit', 'sha256'])
    .execute();
  await schema
    .createTable('attachment_part')
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('sha256', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('data', bytes, (column) => column.notNull())
    .addPrimaryKeyConstraint('attachment_part_at', ['company', 'visit', 'sha256', 'at'])
    .execute();
}

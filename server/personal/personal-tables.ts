import { type Kysely, sql } from 'kysely';

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
  attachment_part: {
    company: string;
    visit: string;
    sha256: string;
    device: string;
    at: number;
    data: Uint8Array;
  };
}

/** The database's type of bytes: `blob` in SQLite, `bytea` in PostgreSQL. */
type Bytes = 'blob' | 'bytea';

/** Makes all tables as their first version has them. */
export async function createPersonalTables(db: Kysely<PersonalTables>, bytes: Bytes): Promise<void> {
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

/**
 * Brings the tables of the first version to the second: a file is known by the device that sends it too, so that no
 * other device of the visit stands in its way by what it begins under the same hash.
 */
export async function keepFilesByDevice(db: Kysely<PersonalTables>, bytes: Bytes): Promise<void> {
  const { schema } = db;
  await schema
    .createTable('file')
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
    .addPrimaryKeyConstraint('attachment_of_device', ['company', 'visit', 'sha256', 'device'])
    .execute();
  await schema
    .createTable('file_part')
    .addColumn('company', 'text', (column) => column.notNull())
    .addColumn('visit', 'text', (column) => column.notNull())
    .addColumn('sha256', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .addColumn('data', bytes, (column) => column.notNull())
    .addPrimaryKeyConstraint('attachment_part_of_device', ['company', 'visit', 'sha256', 'device', 'at'])
    .execute();
  await sql`
    INSERT INTO file (company, visit, sha256, device, kind, media, bytes, held, received_at, erased_at)
    SELECT company, visit, sha256, device, kind, media, bytes, held, received_at, erased_at FROM attachment`.execute(
    db,
  );
  await sql`
    INSERT INTO file_part (company, visit, sha256, device, at, data)
    SELECT company, visit, sha256, attachment.device, at, data FROM attachment_part JOIN attachment
    USING (company, visit, sha256)`.execute(db);
  for (const [old, made] of [
    ['attachment_part', 'file_part'],
    ['attachment', 'file'],
  ] as const) {
    await schema.dropTable(old).execute();
    await schema.alterTable(made).renameTo(old).execute();
  }
}

import { expressionBuilder, type Kysely, type Selectable, type Transaction } from 'kysely';
import { ServerError } from '../errors.ts';
import type { Attachment, AttachmentKind, AttachmentName, PersonalStore, VisitKey } from './personal-store.ts';
import type { PersonalTables } from './personal-tables.ts';

type Row<Table extends keyof PersonalTables> = Selectable<PersonalTables[Table]>;
type Part<Names extends keyof PersonalStore> = Pick<PersonalStore, Names>;

/** What differs between databases. */
export interface OwnOfDatabase extends Part<'overwriteErased' | 'close'> {
  /** Within a transaction that erases: has whoever writes wait until it is done, where the database does not by itself. */
  readonly holdWriters?: (within: Transaction<PersonalTables>) => Promise<void>;
}

/** The store on any SQL database that the tables were made in. */
export function sqlPersonalStore(
  db: Kysely<PersonalTables>,
  { holdWriters = async () => undefined, ...own }: OwnOfDatabase,
): PersonalStore {
  return { ...keys(db), ...erasing(db, holdWriters), ...files(db), ...parts(db), ...own };
}

const columns = expressionBuilder<PersonalTables, 'attachment'>();
/** The rows of a visit, in any of the tables. */
const ofVisit = ({ company, visit }: Pick<AttachmentName, 'company' | 'visit'>) => columns.and({ company, visit });
/** Those of a device in it. */
const ofDevice = ({ company, visit, device }: Omit<AttachmentName, 'sha256'>) =>
  columns.and({ company, visit, device });
/** Those of a file. */
const ofFile = ({ company, visit, sha256, device }: AttachmentName) => columns.and({ company, visit, sha256, device });

function keys(db: Kysely<PersonalTables>): Part<'addKey' | 'isErased' | 'keys' | 'keysBefore' | 'erasures'> {
  const isErased = async (company: string, visit: string) =>
    (await db
      .selectFrom('visit_key')
      .select('device')
      .where(ofVisit({ company, visit }))
      .where('erased_at', 'is not', null)
      .limit(1)
      .executeTakeFirst()) !== undefined;
  return {
    isErased,
    addKey: async ({ company, visit, device, key, createdAt }) => {
      if (await isErased(company, visit)) return 'erased';
      const added = await orFull(
        db
          .insertInto('visit_key')
          .values({ company, visit, device, key: Buffer.from(key), created_at: createdAt, erased_at: null })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst(),
      );
      if (Number(added.numInsertedOrUpdatedRows ?? 0) === 1) {
        // Erased while it came: then nobody else takes it away.
        if (!(await isErased(company, visit))) return 'added';
        await db
          .updateTable('visit_key')
          .set({ key: null, erased_at: createdAt })
          .where(ofDevice({ company, visit, device }))
          .execute();
        return 'erased';
      }
      const row = await db
        .selectFrom('visit_key')
        .selectAll()
        .where(ofDevice({ company, visit, device }))
        .executeTakeFirstOrThrow();
      if (row.key === null) return 'erased';
      return Buffer.from(row.key).equals(key) ? 'same' : 'other';
    },
    keys: async (company, visit) =>
      (await db.selectFrom('visit_key').selectAll().where(ofVisit({ company, visit })).orderBy('device').execute()).map(
        toKey,
      ),
    keysBefore: async (time) =>
      (
        await db
          .selectFrom('visit_key')
          .selectAll()
          .where('key', 'is not', null)
          .where('created_at', '<', time)
          .orderBy('created_at')
          .execute()
      ).map((row) => {
        const { key: _key, ...rest } = toKey(row);
        return rest;
      }),
    erasures: async () =>
      (
        await db
          .selectFrom('visit_key')
          .selectAll()
          .where('erased_at', 'is not', null)
          .orderBy('company')
          .orderBy('visit')
          .orderBy('device')
          .execute()
      ).map(toKey),
  };
}

function erasing(
  db: Kysely<PersonalTables>,
  holdWriters: NonNullable<OwnOfDatabase['holdWriters']>,
): Part<'eraseVisit' | 'eraseBefore'> {
  return {
    eraseVisit: (company, visit, devices, at) =>
      transacted(db, async (within) => {
        await holdWriters(within);
        for (const device of devices) {
          await within
            .insertInto('visit_key')
            .values({ company, visit, device, key: null, created_at: at, erased_at: at })
            .onConflict((conflict) => conflict.doNothing())
            .execute();
        }
        const erased = await within
          .updateTable('visit_key')
          .set({ key: null, erased_at: at })
          .where(ofVisit({ company, visit }))
          .where('key', 'is not', null)
          .executeTakeFirst();
        const of = await within
          .selectFrom('attachment')
          .selectAll()
          .where(ofVisit({ company, visit }))
          .where('erased_at', 'is', null)
          .execute();
        for (const row of of) await eraseFile(within, row, at);
        return { keys: Number(erased.numUpdatedRows), files: of.length };
      }),
    eraseBefore: (kind, time, at) =>
      transacted(db, async (within) => {
        const rows = await within
          .selectFrom('attachment')
          .selectAll()
          .where('kind', '=', kind)
          .where('received_at', '<', time)
          .where('erased_at', 'is', null)
          .execute();
        for (const row of rows) await eraseFile(within, row, at);
        return rows.map((row) => ({ ...toAttachment(row), held: 0, erasedAt: at }));
      }),
  };
}

async function eraseFile(within: Transaction<PersonalTables>, name: AttachmentName, at: number): Promise<void> {
  await within.updateTable('attachment').set({ erased_at: at, held: 0 }).where(ofFile(name)).execute();
  await within.deleteFrom('attachment_part').where(ofFile(name)).execute();
}

function files(
  db: Kysely<PersonalTables>,
): Part<'attachment' | 'attachments' | 'beginAttachment' | 'endAttachment' | 'dropParts'> {
  return {
    attachment: async (name) => {
      const row = await db.selectFrom('attachment').selectAll().where(ofFile(name)).executeTakeFirst();
      return row && toAttachment(row);
    },
    attachments: async (company, visit) => {
      const rows = await db
        .selectFrom('attachment')
        .selectAll()
        .where(ofVisit({ company, visit }))
        .orderBy('sha256')
        .orderBy('device')
        .execute();
      const last = Number.MAX_SAFE_INTEGER;
      return rows.map(toAttachment).sort((a, b) => (a.receivedAt ?? last) - (b.receivedAt ?? last));
    },
    beginAttachment: async ({ company, visit, sha256, device, kind, media, bytes }) => {
      const begun = { company, visit, sha256, device, kind, media, bytes, held: 0, received_at: null, erased_at: null };
      await orFull(
        db
          .insertInto('attachment')
          .values(begun)
          .onConflict((conflict) => conflict.doNothing())
          .execute(),
      );
    },
    endAttachment: async (name, receivedAt) => {
      await db.updateTable('attachment').set({ received_at: receivedAt }).where(ofFile(name)).execute();
    },
    dropParts: (name) =>
      transacted(db, async (within) => {
        await within.updateTable('attachment').set({ held: 0, received_at: null }).where(ofFile(name)).execute();
        await within.deleteFrom('attachment_part').where(ofFile(name)).execute();
      }),
  };
}

function parts(db: Kysely<PersonalTables>): Part<'addPart' | 'data'> {
  return {
    addPart: (name, at, data) =>
      orFull(
        transacted(db, async (within) => {
          // The condition on `held` decides between two that carry on at once.
          const grown = await within
            .updateTable('attachment')
            .set({ held: at + data.length })
            .where(ofFile(name))
            .where('held', '=', at)
            .where('erased_at', 'is', null)
            .executeTakeFirst();
          if (Number(grown.numUpdatedRows) !== 1) return false;
          const { company, visit, sha256, device } = name;
          await within
            .insertInto('attachment_part')
            .values({ company, visit, sha256, device, at, data: Buffer.from(data) })
            .execute();
          return true;
        }),
      ),
    data: async (name) => {
      const rows = await db.selectFrom('attachment_part').select('data').where(ofFile(name)).orderBy('at').execute();
      return new Uint8Array(Buffer.concat(rows.map(({ data }) => data)));
    },
  };
}

/** What SQLite, and PostgreSQL (disk_full), say where nothing more goes onto the disk, or beyond what may be kept. */
const FULL: ReadonlySet<unknown> = new Set(['SQLITE_FULL', '53100']);

async function orFull<Result>(work: Promise<Result>): Promise<Result> {
  try {
    return await work;
  } catch (error) {
    if (!FULL.has((error as { readonly code?: unknown }).code)) throw error;
    throw new ServerError('data-full', '', error);
  }
}

/** One transaction. Where SQLite is full it has rolled back by itself, and rolling back once more would be told instead. */
async function transacted<Result>(
  db: Kysely<PersonalTables>,
  work: (within: Transaction<PersonalTables>) => Promise<Result>,
): Promise<Result> {
  let first: unknown;
  const noted = async (within: Transaction<PersonalTables>) => {
    try {
      return await work(within);
    } catch (error) {
      first = error;
      throw error;
    }
  };
  try {
    return await db.transaction().execute(noted);
  } catch (error) {
    throw first ?? error;
  }
}

const orUndefined = (value: number | null) => (value === null ? undefined : Number(value));

const toKey = (row: Row<'visit_key'>): VisitKey => ({
  company: row.company,
  visit: row.visit,
  device: row.device,
  key: row.key === null ? undefined : new Uint8Array(row.key),
  createdAt: Number(row.created_at),
  erasedAt: orUndefined(row.erased_at),
});

const toAttachment = (row: Row<'attachment'>): Attachment => ({
  company: row.company,
  visit: row.visit,
  sha256: row.sha256,
  device: row.device,
  kind: row.kind as AttachmentKind,
  media: row.media,
  bytes: Number(row.bytes),
  held: Number(row.held),
  receivedAt: orUndefined(row.received_at),
  erasedAt: orUndefined(row.erased_at),
});

import type { Kysely, Selectable, Transaction } from 'kysely';
import type { Attachment, AttachmentKind, AttachmentName, PersonalStore, VisitKey } from './personal-store.ts';
import type { PersonalTables } from './personal-tables.ts';

type Row<Table extends keyof PersonalTables> = Selectable<PersonalTables[Table]>;
type Part<Names extends keyof PersonalStore> = Pick<PersonalStore, Names>;

/** The store on any SQL database that the tables were made in. `close` is the database's own. */
export function sqlPersonalStore(db: Kysely<PersonalTables>, close: () => Promise<void>): PersonalStore {
  return { ...keys(db), ...erasing(db), ...files(db), ...parts(db), close };
}

function keys(db: Kysely<PersonalTables>): Part<'addKey' | 'keys' | 'keysBefore' | 'erasures'> {
  return {
    addKey: async ({ company, visit, device, key, createdAt }) => {
      // A visit that was erased stays so, whichever of its devices comes later.
      const erased = await db
        .selectFrom('visit_key')
        .select('device')
        .where('company', '=', company)
        .where('visit', '=', visit)
        .where('erased_at', 'is not', null)
        .limit(1)
        .executeTakeFirst();
      if (erased !== undefined) return 'erased';
      const added = await db
        .insertInto('visit_key')
        .values({ company, visit, device, key: Buffer.from(key), created_at: createdAt, erased_at: null })
        .onConflict((conflict) => conflict.doNothing())
        .executeTakeFirst();
      if (Number(added.numInsertedOrUpdatedRows ?? 0) === 1) return 'added';
      const row = await db
        .selectFrom('visit_key')
        .selectAll()
        .where('company', '=', company)
        .where('visit', '=', visit)
        .where('device', '=', device)
        .executeTakeFirstOrThrow();
      if (row.key === null) return 'erased';
      return Buffer.from(row.key).equals(key) ? 'same' : 'other';
    },
    keys: async (company, visit) =>
      (
        await db
          .selectFrom('visit_key')
          .selectAll()
          .where('company', '=', company)
          .where('visit', '=', visit)
          .orderBy('device')
          .execute()
      ).map(toKey),
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

function erasing(db: Kysely<PersonalTables>): Part<'eraseVisit' | 'eraseBefore'> {
  return {
    eraseVisit: (company, visit, devices, at) =>
      db.transaction().execute(async (within) => {
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
          .where('company', '=', company)
          .where('visit', '=', visit)
          .where('key', 'is not', null)
          .executeTakeFirst();
        const of = await within
          .selectFrom('attachment')
          .selectAll()
          .where('company', '=', company)
          .where('visit', '=', visit)
          .where('erased_at', 'is', null)
          .execute();
        for (const row of of) await eraseFile(within, row, at);
        return { keys: Number(erased.numUpdatedRows), files: of.length };
      }),
    eraseBefore: (kind, time, at) =>
      db.transaction().execute(async (within) => {
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
  const { company, visit, sha256 } = name;
  await within
    .deleteFrom('attachment_part')
    .where('company', '=', company)
    .where('visit', '=', visit)
    .where('sha256', '=', sha256)
    .execute();
  await within
    .updateTable('attachment')
    .set({ erased_at: at, held: 0 })
    .where('company', '=', company)
    .where('visit', '=', visit)
    .where('sha256', '=', sha256)
    .execute();
}

function files(
  db: Kysely<PersonalTables>,
): Part<'attachment' | 'attachments' | 'beginAttachment' | 'endAttachment' | 'dropParts'> {
  return {
    attachment: async ({ company, visit, sha256 }) => {
      const row = await db
        .selectFrom('attachment')
        .selectAll()
        .where('company', '=', company)
        .where('visit', '=', visit)
        .where('sha256', '=', sha256)
        .executeTakeFirst();
      return row && toAttachment(row);
    },
    attachments: async (company, visit) => {
      const rows = await db
        .selectFrom('attachment')
        .selectAll()
        .where('company', '=', company)
        .where('visit', '=', visit)
        .orderBy('sha256')
        .execute();
      const last = Number.MAX_SAFE_INTEGER;
      return rows.map(toAttachment).sort((a, b) => (a.receivedAt ?? last) - (b.receivedAt ?? last));
    },
    beginAttachment: async ({ company, visit, sha256, device, kind, media, bytes }) => {
      await db
        .insertInto('attachment')
        .values({ company, visit, sha256, device, kind, media, bytes, held: 0, received_at: null, erased_at: null })
        .onConflict((conflict) => conflict.doNothing())
        .execute();
    },
    endAttachment: async ({ company, visit, sha256 }, receivedAt) => {
      await db
        .updateTable('attachment')
        .set({ received_at: receivedAt })
        .where('company', '=', company)
        .where('visit', '=', visit)
        .where('sha256', '=', sha256)
        .execute();
    },
    dropParts: ({ company, visit, sha256 }) =>
      db.transaction().execute(async (within) => {
        await within
          .deleteFrom('attachment_part')
          .where('company', '=', company)
          .where('visit', '=', visit)
          .where('sha256', '=', sha256)
          .execute();
        await within
          .updateTable('attachment')
          .set({ held: 0, received_at: null })
          .where('company', '=', company)
          .where('visit', '=', visit)
          .where('sha256', '=', sha256)
          .execute();
      }),
  };
}

function parts(db: Kysely<PersonalTables>): Part<'addPart' | 'data'> {
  return {
    addPart: ({ company, visit, sha256 }, at, data) =>
      db.transaction().execute(async (within) => {
        // The condition on `held` decides between two that carry on at once.
        const grown = await within
          .updateTable('attachment')
          .set({ held: at + data.length })
          .where('company', '=', company)
          .where('visit', '=', visit)
          .where('sha256', '=', sha256)
          .where('held', '=', at)
          .where('erased_at', 'is', null)
          .executeTakeFirst();
        if (Number(grown.numUpdatedRows) !== 1) return false;
        await within
          .insertInto('attachment_part')
          .values({ company, visit, sha256, at, data: Buffer.from(data) })
          .execute();
        return true;
      }),
    data: async ({ company, visit, sha256 }) => {
      const rows = await db
        .selectFrom('attachment_part')
        .select('data')
        .where('company', '=', company)
        .where('visit', '=', visit)
        .where('sha256', '=', sha256)
        .orderBy('at')
        .execute();
      return new Uint8Array(Buffer.concat(rows.map(({ data }) => data)));
    },
  };
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

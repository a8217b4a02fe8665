import type { Kysely, Selectable, Transaction } from 'kysely';
import type { Role } from '../../grammar/visit/roles.ts';
import type {
  AuditLine,
  Code,
  CodeKind,
  Device,
  KeptAuditLine,
  Passkey,
  PeopleStore,
  Person,
  Session,
} from './people-store.ts';
import type { PeopleTables } from './people-tables.ts';
import { sqlLeases } from './sql-leases.ts';

type Row<Table extends keyof PeopleTables> = Selectable<PeopleTables[Table]>;

/** The store on any SQL database that the tables were made in. `close` is the database's own. */
export function sqlPeopleStore(db: Kysely<PeopleTables>, close: () => Promise<void>): PeopleStore {
  return {
    ...companies(db),
    ...people(db),
    ...devices(db),
    ...sessions(db),
    ...codes(db),
    ...trail(db),
    ...sqlLeases(db),
    close,
  };
}

type Part<Names extends keyof PeopleStore> = Pick<PeopleStore, Names>;

function companies(db: Kysely<PeopleTables>): Part<'addCompany' | 'company' | 'countCompanies'> {
  return {
    addCompany: async ({ company, name, createdAt }) => {
      const added = await db
        .insertInto('company')
        .values({ company, name, created_at: createdAt })
        .onConflict((conflict) => conflict.doNothing())
        .executeTakeFirst();
      return Number(added.numInsertedOrUpdatedRows ?? 0) === 1;
    },
    company: async (company) => {
      const row = await db.selectFrom('company').selectAll().where('company', '=', company).executeTakeFirst();
      return row && { company: row.company, name: row.name, createdAt: Number(row.created_at) };
    },
    countCompanies: async () => {
      const row = await db
        .selectFrom('company')
        .select((column) => column.fn.countAll().as('count'))
        .executeTakeFirstOrThrow();
      return Number(row.count);
    },
  };
}

function people(
  db: Kysely<PeopleTables>,
): Part<'hasPeople' | 'hasKeeper' | 'addPerson' | 'person' | 'personByLogin' | 'people' | 'changePerson'> {
  const present = db.selectFrom('person').where('removed_at', 'is', null);
  return {
    hasPeople: async () => (await present.select('person').limit(1).executeTakeFirst()) !== undefined,
    hasKeeper: async () =>
      (await present.select('person').where('role', '=', 'keeper').limit(1).executeTakeFirst()) !== undefined,
    addPerson: async (person) => {
      const added = await db
        .insertInto('person')
        .values({
          person: person.person,
          company: person.company,
          login: person.login,
          name: person.name,
          role: person.role,
          password: person.password ?? null,
          created_at: person.createdAt,
          removed_at: person.removedAt ?? null,
        })
        .onConflict((conflict) => conflict.doNothing())
        .executeTakeFirst();
      return Number(added.numInsertedOrUpdatedRows ?? 0) === 1;
    },
    person: async (company, person) => {
      const row = await db
        .selectFrom('person')
        .selectAll()
        .where('company', '=', company)
        .where('person', '=', person)
        .executeTakeFirst();
      return row && toPerson(row);
    },
    personByLogin: async (login) => {
      const row = await present.selectAll().where('login', '=', login).executeTakeFirst();
      return row && toPerson(row);
    },
    people: async (company) =>
      (await present.selectAll().where('company', '=', company).orderBy('name').orderBy('person').execute()).map(
        toPerson,
      ),
    changePerson: (company, person, change) =>
      db.transaction().execute(async (within) => {
        const who = await within
          .selectFrom('person')
          .select('role')
          .where('company', '=', company)
          .where('person', '=', person)
          .where('removed_at', 'is', null)
          .executeTakeFirst();
        if (who === undefined) return 'unknown';
        const stays = change.removedAt === undefined && (change.role ?? who.role) === 'keeper';
        if (who.role === 'keeper' && !stays && !(await hasOtherKeeper(within, company, person))) return 'last-keeper';
        const { name, role, password, removedAt } = change;
        const set = {
          ...(name === undefined ? {} : { name }),
          ...(role === undefined ? {} : { role }),
          ...(password === undefined ? {} : { password }),
          ...(removedAt === undefined ? {} : { removed_at: removedAt }),
        };
        if (Object.keys(set).length > 0) {
          await within.updateTable('person').set(set).where('person', '=', person).execute();
        }
        if (removedAt !== undefined) await takeAway(within, person, removedAt);
        return 'changed';
      }),
  };
}

/** Locks the company's row first, where the database knows how: of two keepers who go at once, one stays. */
async function hasOtherKeeper(within: Transaction<PeopleTables>, company: string, person: string): Promise<boolean> {
  await within.updateTable('company').set({ company }).where('company', '=', company).execute();
  const other = await within
    .selectFrom('person')
    .select('person')
    .where('company', '=', company)
    .where('role', '=', 'keeper')
    .where('person', '<>', person)
    .where('removed_at', 'is', null)
    .limit(1)
    .executeTakeFirst();
  return other !== undefined;
}

async function takeAway(within: Transaction<PeopleTables>, person: string, at: number): Promise<void> {
  await within
    .updateTable('device')
    .set({ revoked_at: at })
    .where('person', '=', person)
    .where('revoked_at', 'is', null)
    .execute();
  await within.deleteFrom('session').where('person', '=', person).execute();
  await within.deleteFrom('passkey').where('person', '=', person).execute();
  await within.deleteFrom('code').where('person', '=', person).execute();
}

function devices(db: Kysely<PeopleTables>): Part<'addDevice' | 'device' | 'devices' | 'revokeDevice'> {
  return {
    addDevice: async ({ device, company, person, publicKey, pairedAt, revokedAt }) => {
      const added = await db
        .insertInto('device')
        .values({
          device,
          company,
          person,
          public_key: publicKey,
          paired_at: pairedAt,
          revoked_at: revokedAt ?? null,
        })
        .onConflict((conflict) => conflict.doNothing())
        .executeTakeFirst();
      return Number(added.numInsertedOrUpdatedRows ?? 0) === 1;
    },
    device: async (device) => {
      const row = await db.selectFrom('device').selectAll().where('device', '=', device).executeTakeFirst();
      return row && toDevice(row);
    },
    devices: async (company) =>
      (
        await db
          .selectFrom('device')
          .selectAll()
          .where('company', '=', company)
          .orderBy('paired_at')
          .orderBy('device')
          .execute()
      ).map(toDevice),
    revokeDevice: async (company, device, at) => {
      const revoked = await db
        .updateTable('device')
        .set({ revoked_at: at })
        .where('company', '=', company)
        .where('device', '=', device)
        .where('revoked_at', 'is', null)
        .executeTakeFirst();
      return Number(revoked.numUpdatedRows) === 1;
    },
  };
}

function sessions(
  db: Kysely<PeopleTables>,
): Part<'addSession' | 'session' | 'noteUse' | 'endSession' | 'endSessionsOf'> {
  return {
    addSession: async ({ hash, company, person, by, createdAt, lastUsedAt }) => {
      await db
        .insertInto('session')
        .values({ hash, company, person, by, created_at: createdAt, last_used_at: lastUsedAt })
        .execute();
    },
    session: async (hash) => {
      const row = await db.selectFrom('session').selectAll().where('hash', '=', hash).executeTakeFirst();
      return row && toSession(row);
    },
    noteUse: async (hash, at) => {
      await db.updateTable('session').set({ last_used_at: at }).where('hash', '=', hash).execute();
    },
    endSession: async (hash) => {
      await db.deleteFrom('session').where('hash', '=', hash).execute();
    },
    endSessionsOf: async (company, person, but) => {
      const ending = db.deleteFrom('session').where('company', '=', company).where('person', '=', person);
      await (but === undefined ? ending : ending.where('hash', '<>', but)).execute();
    },
  };
}

function codes(
  db: Kysely<PeopleTables>,
): Part<'addCode' | 'takeCode' | 'addPasskey' | 'passkey' | 'passkeysOf' | 'countPasskey'> {
  return {
    addCode: async ({ kind, hash, company, person, detail, expiresAt }) => {
      await db
        .insertInto('code')
        .values({ kind, hash, company, person, detail, expires_at: expiresAt, used: 0 })
        .execute();
    },
    takeCode: async (kind, hash, now) => {
      // The condition on `used` decides between two that take it at once.
      const taken = await db
        .updateTable('code')
        .set({ used: 1 })
        .where('hash', '=', hash)
        .where('kind', '=', kind)
        .where('used', '=', 0)
        .executeTakeFirst();
      const row = await db
        .selectFrom('code')
        .selectAll()
        .where('hash', '=', hash)
        .where('kind', '=', kind)
        .executeTakeFirst();
      if (row === undefined) return 'unknown';
      if (Number(taken.numUpdatedRows) === 0) return 'used';
      return Number(row.expires_at) < now ? 'expired' : toCode(row);
    },
    addPasskey: async ({ id, company, person, publicKey, counter, createdAt }) => {
      await db
        .insertInto('passkey')
        .values({ id, company, person, public_key: publicKey, counter, created_at: createdAt })
        .execute();
    },
    passkey: async (id) => {
      const row = await db.selectFrom('passkey').selectAll().where('id', '=', id).executeTakeFirst();
      return row && toPasskey(row);
    },
    passkeysOf: async (company, person) =>
      (
        await db
          .selectFrom('passkey')
          .selectAll()
          .where('company', '=', company)
          .where('person', '=', person)
          .orderBy('created_at')
          .execute()
      ).map(toPasskey),
    countPasskey: async (id, counter) => {
      await db.updateTable('passkey').set({ counter }).where('id', '=', id).execute();
    },
  };
}

function trail(db: Kysely<PeopleTables>): Part<'countAttempt' | 'forgetAttempts' | 'note' | 'audit' | 'sweep'> {
  return {
    countAttempt: async (key, now, windowMs) => {
      const row = await db
        .insertInto('attempt')
        .values({ key, since: now, count: 1 })
        .onConflict((conflict) =>
          conflict.column('key').doUpdateSet((column) => ({
            count: column
              .case()
              .when('attempt.since', '<=', now - windowMs)
              .then(1)
              .else(column('attempt.count', '+', 1))
              .end(),
            since: column
              .case()
              .when('attempt.since', '<=', now - windowMs)
              .then(now)
              .else(column.ref('attempt.since'))
              .end(),
          })),
        )
        .returning('count')
        .executeTakeFirstOrThrow();
      return Number(row.count);
    },
    forgetAttempts: async (key) => {
      await db.deleteFrom('attempt').where('key', '=', key).execute();
    },
    note: async (line: AuditLine) => {
      await db.insertInto('audit').values(line).execute();
    },
    audit: async (company, { before, limit }) => {
      const lines = db.selectFrom('audit').selectAll().where('company', 'in', [company, '']);
      const page = before === undefined ? lines : lines.where('id', '<', before);
      return (await page.orderBy('id', 'desc').limit(limit).execute()).map(toAuditLine);
    },
    sweep: async (now, { idleMs, longestMs }) => {
      await db
        .deleteFrom('code')
        .where('expires_at', '<', now - LATER_MS)
        .execute();
      const brief = db.deleteFrom('code').where('kind', 'in', ['ticket', 'passkey']);
      await brief.where('expires_at', '<', now - SOON_MS).execute();
      await db
        .deleteFrom('attempt')
        .where('since', '<', now - SOON_MS)
        .execute();
      await db
        .deleteFrom('session')
        .where((column) =>
          column.or([column('last_used_at', '<', now - idleMs), column('created_at', '<', now - longestMs)]),
        )
        .execute();
    },
  };
}

/** So long a code is still told to be used or expired: a day. */
const LATER_MS = 86_400_000;
/** So long those are kept that come with each connection, and counts: an hour, longer than any window. */
const SOON_MS = 3_600_000;

const toPerson = (row: Row<'person'>): Person => ({
  person: row.person,
  company: row.company,
  login: row.login,
  name: row.name,
  role: row.role as Role,
  password: row.password ?? undefined,
  createdAt: Number(row.created_at),
  removedAt: row.removed_at === null ? undefined : Number(row.removed_at),
});
const toDevice = (row: Row<'device'>): Device => ({
  device: row.device,
  company: row.company,
  person: row.person,
  publicKey: row.public_key,
  pairedAt: Number(row.paired_at),
  revokedAt: row.revoked_at === null ? undefined : Number(row.revoked_at),
});
const toSession = (row: Row<'session'>): Session => ({
  hash: row.hash,
  company: row.company,
  person: row.person,
  by: row.by,
  createdAt: Number(row.created_at),
  lastUsedAt: Number(row.last_used_at),
});
const toCode = (row: Row<'code'>): Code => ({
  kind: row.kind as CodeKind,
  hash: row.hash,
  company: row.company,
  person: row.person,
  detail: row.detail,
  expiresAt: Number(row.expires_at),
});
const toPasskey = (row: Row<'passkey'>): Passkey => ({
  id: row.id,
  company: row.company,
  person: row.person,
  publicKey: row.public_key,
  counter: Number(row.counter),
  createdAt: Number(row.created_at),
});
const toAuditLine = (row: Row<'audit'>): KeptAuditLine => ({
  id: Number(row.id),
  at: Number(row.at),
  company: row.company,
  person: row.person,
  device: row.device,
  deed: row.deed,
  outcome: row.outcome as AuditLine['outcome'],
  detail: row.detail,
  times: row.times,
});

import type { Kysely } from 'kysely';
import type { PeopleStore } from './people-store.ts';
import type { PeopleTables } from './people-tables.ts';

/** The leases of visits on any SQL database that the tables were made in. */
export function sqlLeases(db: Kysely<PeopleTables>): Pick<PeopleStore, 'lease' | 'takeLease'> {
  return {
    lease: async (company, visit) => {
      const row = await db
        .selectFrom('lease')
        .selectAll()
        .where('company', '=', company)
        .where('visit', '=', visit)
        .executeTakeFirst();
      return row && { company, visit, device: row.device, person: row.person, takenAt: Number(row.taken_at) };
    },
    takeLease: async ({ company, visit, device, person, takenAt }, before) => {
      const holder = { device, person, taken_at: takenAt };
      if (before === undefined) {
        const added = await db
          .insertInto('lease')
          .values({ company, visit, ...holder })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        return Number(added.numInsertedOrUpdatedRows ?? 0) === 1;
      }
      const changed = await db
        .updateTable('lease')
        .set(holder)
        .where('company', '=', company)
        .where('visit', '=', visit)
        .where('device', '=', before.device)
        .where('taken_at', '=', before.takenAt)
        .executeTakeFirst();
      return Number(changed.numUpdatedRows) === 1;
    },
  };
}

import type { Kysely } from 'kysely';
import type { PeopleStore } from './people-store.ts';
import type { PeopleTables } from './people-tables.ts';

/** The leases of visits on any SQL database that the tables were made in. */
export function sqlLeases(db: Kysely<PeopleTables>): Pick<PeopleStore, 'leases' | 'giveLease' | 'olderLease'> {
  return {
    leases: async (company, visit) => {
      const rows = await db
        .selectFrom('lease_step')
        .selectAll()
        .where('company', '=', company)
        .where('visit', '=', visit)
        .orderBy('number')
        .execute();
      return rows.map(({ number, device, person, taken_at, behind }) => ({
        company,
        visit,
        number,
        device,
        person,
        takenAt: Number(taken_at),
        behind: JSON.parse(behind),
      }));
    },
    giveLease: async ({ takenAt, behind, ...lease }) => {
      const added = await db
        .insertInto('lease_step')
        .values({ ...lease, taken_at: takenAt, behind: JSON.stringify(behind) })
        .onConflict((conflict) => conflict.doNothing())
        .executeTakeFirst();
      return Number(added.numInsertedOrUpdatedRows ?? 0) === 1;
    },
    olderLease: async (company, visit) => {
      const row = await db
        .selectFrom('lease')
        .select('device')
        .where('company', '=', company)
        .where('visit', '=', visit)
        .executeTakeFirst();
      return row?.device;
    },
  };
}

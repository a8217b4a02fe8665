import { join } from 'node:path';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import { readRecord } from '../heads/read-folder.ts';
import { Auditor } from '../people/auditor.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { openSqlitePeopleStore, PEOPLE_FILE } from '../people/sqlite-people-store.ts';
import type { PersonalStore } from '../personal/personal-store.ts';
import { openSqlitePersonalStore, PERSONAL_FILE } from '../personal/sqlite-personal-store.ts';
import type { EventStore } from '../store/event-store.ts';
import { sqliteReader } from '../store/sqlite-reader.ts';
import { VisitActivity } from '../store/visit-activity.ts';

/** A data folder as a tool opens it, which may do so beside its server: the record to read, what is personal to change. */
export interface OpenedPersonal {
  readonly events: Pick<EventStore, 'events' | 'streams' | 'visits' | 'ends'>;
  readonly folder: string;
  readonly personal: PersonalStore;
  readonly people: Pick<PeopleStore, 'leases'>;
  readonly auditor: Auditor;
  readonly company: string;
  /** Who does it: stands on the trail. */
  readonly by: { readonly company: string; readonly person: string };
}

/**
 * Opens record, people and what is personal of the folder that the options name, and closes them behind the work.
 * @throws {ServerError} tool-wrong, where there is no record, and what opening throws.
 */
export function withPersonal<Result>(
  tool: string,
  options: Readonly<Record<string, string | undefined>>,
  work: (opened: OpenedPersonal) => Promise<Result>,
): Promise<Result> {
  const folder = options['data'] ?? process.env['DATA_DIR'] ?? 'data';
  const company = options['company'] ?? LOCAL_COMPANY;
  return readRecord(folder, async ({ database }) => {
    const events = sqliteReader(database, VisitActivity.of(database));
    const personal = await openSqlitePersonalStore(join(folder, PERSONAL_FILE));
    const people = await openSqlitePeopleStore(join(folder, PEOPLE_FILE));
    const auditor = new Auditor(people, Date.now);
    try {
      return await work({
        events,
        folder,
        personal,
        people,
        auditor,
        company,
        by: { company, person: `npm run ${tool}` },
      });
    } finally {
      await auditor.close();
      await people.close();
      await personal.close();
    }
  });
}

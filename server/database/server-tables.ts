import type { PeopleTables } from '../people/people-tables.ts';
import type { PersonalTables } from '../personal/personal-tables.ts';

/** All tables that kysely's queries see, whichever database holds them: who adds some, adds them here. */
export type ServerTables = PeopleTables & PersonalTables;

import type { TestProject } from 'vitest/node';
import { postgresPrograms, startOwnPostgres } from './own-postgres.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of a PostgreSQL in which each test makes databases of its own. */
    readonly postgres: string;
  }
}

/** Starts one PostgreSQL for all test files that run on it. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const own = await startOwnPostgres(await postgresPrograms());
  project.provide('postgres', await own.database());
  return () => own.remove();
}

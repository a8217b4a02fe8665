import type { TestProject } from 'vitest/node';
import { postgresPrograms, startOwnPostgres } from './own-postgres.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of a PostgreSQL in which each test makes databases of its own. */
    readonly postgres: string;
  }
}

/** Starts one PostgreSQL for all test files that run on it; none where other files were asked for. */
export default async function setup(project: TestProject): Promise<(() => Promise<void>) | undefined> {
  // Not among its types: where it is gone one day, PostgreSQL is started for nothing.
  const { filenamePattern } = project.vitest as unknown as { readonly filenamePattern?: string[] };
  const { testFiles } = await project.globTestFiles(filenamePattern);
  if (testFiles.length === 0) return undefined;
  const own = await startOwnPostgres(await postgresPrograms());
  project.provide('postgres', await own.database());
  return () => own.remove();
}

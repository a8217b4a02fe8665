import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { tries } from '../how-much.ts';
import { type Killable, killAgain, killablePostgres, killableServer, killableTwin } from '../load/kill-server.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from './own-postgres.ts';

const programs = await postgresPrograms();
const noPostgres = 'missing' in programs;
const scratch = scratchFolder();
afterAll(() => scratch.remove());
const WITHIN_MS = 1_800_000;

async function held(target: Killable, names: readonly [string, string, string]): Promise<void> {
  const kills = tries(3, 200);
  const { lost, acknowledged } = await killAgain(target, kills);
  for (const [at, value] of [kills, acknowledged, lost].entries()) tellFigure(names[at] as string, value);
  expect(acknowledged).toBeGreaterThan(kills);
  expect(lost).toBe(0);
}

async function onPostgres(work: (postgres: OwnPostgres) => Promise<void>): Promise<void> {
  const postgres = await startOwnPostgres(programs);
  try {
    await work(postgres);
  } finally {
    await postgres.remove();
  }
}

test(
  'a server that is killed (SIGKILL) while devices write loses nothing that it acknowledged',
  async () => {
    const names = ['kills of the server', 'events acknowledged before a kill', 'of these lost'] as const;
    await held(await killableServer(buildServer(), join(scratch.path, 'data')), names);
  },
  WITHIN_MS,
);

test.skipIf(noPostgres)(
  'a PostgreSQL that is killed (SIGKILL) while devices write loses nothing that was acknowledged',
  async () => {
    const names = [
      'kills of PostgreSQL',
      'events acknowledged before PostgreSQL was killed',
      'of these lost by it',
    ] as const;
    await onPostgres(async (postgres) => {
      await held(await killablePostgres(buildServer(), join(scratch.path, 'under'), postgres), names);
    });
  },
  WITHIN_MS,
);

test.skipIf(noPostgres)(
  'one of two servers that is killed (SIGKILL) on a PostgreSQL loses nothing that it acknowledged',
  async () => {
    const names = [
      'kills of one of two servers',
      'events acknowledged before one of two was killed',
      'of these lost by both',
    ] as const;
    await onPostgres(async (postgres) => {
      await held(await killableTwin(buildServer(), join(scratch.path, 'twin'), postgres), names);
    });
  },
  WITHIN_MS,
);

import { type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { followsText } from '../../grammar/visit/signed-head.ts';
import { demandUpToDate } from '../database/migrations.ts';
import { checkGuards } from '../database/only-grows.ts';
import { openPostgres, type PostgresDatabase } from '../database/open-postgres.ts';
import { ServerError } from '../errors.ts';
import { postgresPersonalStore } from '../personal/postgres-personal-store.ts';
import { erasureWordsOf } from '../personal/read-erasures.ts';
import { postgresReader } from '../store/postgres-reader.ts';
import { type FollowsRow, followsOf } from '../store/summary-rows.ts';
import { headsInDatabase } from './heads-in-database.ts';
import type { HeldByDevice } from './held-by-device.ts';
import { signerInDatabase } from './open-database.ts';
import { givenUpLine, type KeptElsewhere, verifierFor, verifyHeld } from './verify-all.ts';
import type { Verification } from './verify-record.ts';
import type { Finding, HeldStream } from './verify-stream.ts';

/**
 * Holds a PostgreSQL database, as it stands, against its chains, its heads, what was kept elsewhere and what devices have.
 * @throws {ServerError} database-unreachable, database-unsafe, database-old, database-foreign, database-newer, tool-wrong.
 */
export async function verifyDatabase(
  url: string,
  devices: readonly HeldByDevice[],
  kept: KeptElsewhere = {},
): Promise<Verification> {
  const database = await openPostgres(url);
  try {
    await demandUpToDate(database);
    const place = headsInDatabase(database);
    const ownKey = (await signerInDatabase(database))?.publicKey;
    const own = await place.read(verifierFor(kept.key ?? ownKey));
    // After the heads: a server that writes on meanwhile signs for what is then not yet read.
    const streams = await heldInDatabase(database);
    const findings = await guardFindings(database);
    const erased = await erasureWordsOf(postgresPersonalStore(database));
    const notes = [...(await place.givenUp()).map(givenUpLine), ...erased];
    return await verifyHeld(streams, devices, { own, ownKey, kept, findings, notes });
  } finally {
    await database.close();
  }
}

async function guardFindings({ pool, name }: PostgresDatabase): Promise<readonly Finding[]> {
  try {
    await checkGuards(pool, name);
    return [];
  } catch (error) {
    if (error instanceof ServerError && error.code === 'database-changed') {
      return [{ stream: '', sentence: error.message }];
    }
    throw error;
  }
}

type Row = StreamId & FollowsRow & { readonly forks: number; readonly said: number | null };

const STREAMS = `
SELECT id, company, visit, device, epoch, follows_epoch AS "followsEpoch", follows_seq AS "followsSeq",
  follows_hash AS "followsHash", (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks,
  (SELECT max(seq) FROM said WHERE said.company = stream.company AND said.visit = stream.visit
    AND said.device = stream.device AND said.epoch = stream.epoch
    AND NOT EXISTS (SELECT FROM stream AS later WHERE later.company = said.company AND later.visit = said.visit
      AND later.device = said.device AND later.follows_epoch = said.epoch)) AS said
FROM stream
UNION ALL SELECT NULL, company, visit, device, epoch, NULL, NULL, NULL, 0, max(seq) FROM said
  WHERE NOT EXISTS (SELECT FROM stream WHERE stream.company = said.company AND stream.visit = said.visit
    AND stream.device = said.device AND stream.epoch = said.epoch)
  GROUP BY company, visit, device, epoch
ORDER BY 1 NULLS LAST, 2, 3, 4, 5`;

const EVENTS_A_PART = 1_000;

async function heldInDatabase({ pool }: PostgresDatabase): Promise<readonly HeldStream[]> {
  const reader = postgresReader(pool);
  const held: HeldStream[] = [];
  for (const row of (await pool.query<Row>(STREAMS)).rows) {
    const { company, visit, device, epoch, forks, said } = row;
    const stream = { company, visit, device, epoch };
    const events: HeldStream['events'][number][] = [];
    for (let after = 0; ; ) {
      const part = await reader.part(stream, { after, limit: EVENTS_A_PART });
      events.push(...part);
      const last = part.at(-1);
      if (last === undefined || part.length < EVENTS_A_PART) break;
      after = last.seq;
    }
    const follows = followsText(followsOf(row).follows);
    held.push({ stream: streamText(stream), events, forks, follows, said: said ?? undefined });
  }
  return held;
}

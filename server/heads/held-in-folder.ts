import { existsSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { streamText } from '../../grammar/visit/envelope.ts';
import { ServerError } from '../errors.ts';
import { identify } from '../store/sqlite-schema.ts';
import { RECORD_FILE } from '../store/sqlite-store.ts';
import { readNumber } from './high-water.ts';
import { HIGH_WATER_FILE } from './keep-heads.ts';
import type { HeldStream } from './verify-stream.ts';

interface Row {
  readonly company: string;
  readonly visit: string;
  readonly device: string;
  readonly epoch: number;
  readonly forks: number;
  readonly follows: string;
  readonly seq: number | null;
  readonly hash: string;
  readonly body: Buffer;
  readonly receivedAt: number;
}

/** What a data folder holds, read only and as it stands: also one that no server would start with. */
export interface HeldFolder {
  readonly streams: readonly HeldStream[];
  /** How many events were acknowledged and are not here. */
  readonly missing: number;
}

/** @throws {ServerError} data-unwritable, data-foreign, data-newer. */
export function heldInFolder(folder: string): HeldFolder {
  const path = join(folder, RECORD_FILE);
  if (!existsSync(path)) throw new ServerError('tool-wrong', `There is no record in ${folder}: name a data folder.`);
  const database = openToRead(path);
  try {
    identify(database, path);
    const rows = database.prepare<[], Row>(`
      SELECT company, visit, device, epoch, event.seq, event.hash, event.body, event.received_at AS receivedAt,
        coalesce(follows_epoch || ' ' || follows_seq || ' ' || follows_hash, '') AS follows,
        (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks
      FROM stream LEFT JOIN event ON event.stream = stream.id ORDER BY stream.id, event.seq`);
    const streams = new Map<string, HeldStream & { readonly events: HeldStream['events'][number][] }>();
    for (const row of rows.iterate()) {
      const stream = nameOf(row);
      const held = streams.get(stream) ?? { stream, events: [], forks: row.forks, follows: row.follows };
      streams.set(stream, held);
      const { seq, hash, receivedAt } = row;
      if (seq !== null) held.events.push({ seq, hash, body: row.body.toString('utf8'), receivedAt });
    }
    const last = database.prepare<[], number | null>('SELECT max(arrival) FROM event').pluck().get() ?? 0;
    return { streams: [...streams.values()], missing: Math.max(0, readNumber(join(folder, HIGH_WATER_FILE)) - last) };
  } finally {
    database.close();
  }
}

/** A name that no stream can have is shown as it stands. */
function nameOf(row: Row): string {
  try {
    return streamText(row);
  } catch {
    return `${row.company}/${row.visit}/${row.device}/${row.epoch}`;
  }
}

function openToRead(path: string): SQLite.Database {
  try {
    return new SQLite(path, { readonly: true, fileMustExist: true });
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
}

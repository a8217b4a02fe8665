import { existsSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { parseStreamText, type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { ServerError } from '../errors.ts';
import { judgeEvent, startHead } from '../store/judge-event.ts';
import { changedStructure, identify, isMarkedInUse } from '../store/sqlite-schema.ts';
import { RECORD_FILE } from '../store/sqlite-store.ts';
import { readNumber } from './high-water.ts';
import { HIGH_WATER_FILE } from './keep-heads.ts';
import type { Finding, HeldStream } from './verify-stream.ts';

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
  readonly arrival: number;
}

/** What a data folder holds, read only and as it stands: also one that no server would start with. */
export interface HeldFolder {
  readonly streams: readonly HeldStream[];
  /** What the file itself is not as it was: what is missing in it, what was done to its tables. */
  readonly findings: readonly Finding[];
  /** Worth knowing, and no proof of a change. */
  readonly notes: readonly string[];
}

/** @throws {ServerError} data-unwritable, data-foreign, data-newer. */
export function heldInFolder(folder: string): HeldFolder {
  const path = join(folder, RECORD_FILE);
  if (!existsSync(path)) throw new ServerError('tool-wrong', `There is no record in ${folder}: name a data folder.`);
  const hasLog = existsSync(`${path}-wal`);
  const database = openToRead(path);
  try {
    identify(database, path);
    const rows = database.prepare<[], Row>(`
      SELECT company, visit, device, epoch, event.seq, event.hash, event.body, event.received_at AS receivedAt, event.arrival,
        coalesce(follows_epoch || ' ' || follows_seq || ' ' || follows_hash, '') AS follows,
        (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks
      FROM stream LEFT JOIN event ON event.stream = stream.id ORDER BY stream.id, event.seq`);
    const streams = new Map<string, HeldStream & { readonly events: HeldStream['events'][number][] }>();
    for (const row of rows.iterate()) {
      const stream = nameOf(row);
      const held = streams.get(stream) ?? { stream, events: [], forks: row.forks, follows: row.follows };
      streams.set(stream, held);
      const { seq, hash, receivedAt, arrival } = row;
      if (seq !== null) held.events.push({ seq, hash, body: row.body.toString('utf8'), receivedAt, arrival });
    }
    return {
      streams: [...streams.values()],
      findings: [...ofFile(database, hasLog), ...missing(database, folder)],
      notes: oddForks(database),
    };
  } finally {
    database.close();
  }
}

/** What was done to the file as a whole. */
function ofFile(database: SQLite.Database, hasLog: boolean): readonly Finding[] {
  const changed = changedStructure(database);
  return [
    ...(isMarkedInUse(database) && !hasLog
      ? [
          {
            stream: '',
            sentence: 'The record was copied or left without its log (-wal): what was written last may be missing.',
          },
        ]
      : []),
    ...changed.map((name) => ({ stream: '', sentence: `${name} in the tables is not as it was made.` })),
  ];
}

interface ForkRow extends Omit<Row, 'forks' | 'follows' | 'receivedAt' | 'arrival' | 'seq'> {
  readonly seq: number;
  readonly before: string | null;
}

/** Contradicting events of which no head tells the text: those whose hash does not follow from it either. */
function oddForks(database: SQLite.Database): readonly string[] {
  const rows = database.prepare<[], ForkRow>(`
    SELECT company, visit, device, epoch, fork.seq, fork.hash, fork.body, before.hash AS before
    FROM fork JOIN stream ON stream.id = fork.stream
    LEFT JOIN event AS before ON before.stream = fork.stream AND before.seq = fork.seq - 1 ORDER BY fork.id`);
  return rows.all().flatMap((row) => {
    const { seq, hash, before, body: bytes, company, visit, device, epoch } = row;
    const stream = { company, visit, device, epoch };
    // A name that no stream can have is found where its chain is held against it.
    if (parseStreamText(nameOf(row)) === undefined) return [];
    const end = before === null ? startHead(stream) : { seq: seq - 1, hash: before };
    const fits = judgeEvent({ ...end, seq: seq - 1 }, { seq, hash, body: bytes.toString('utf8') }, () => undefined);
    return fits.kind === 'stored'
      ? []
      : [`${nameOf(row)}: a contradicting event ${seq} does not fit its own hash: it was sent so, or changed since.`];
  });
}

function missing(database: SQLite.Database, folder: string): readonly Finding[] {
  const last = database.prepare<[], number | null>('SELECT max(arrival) FROM event').pluck().get() ?? 0;
  const lost = readNumber(join(folder, HIGH_WATER_FILE)) - last;
  return lost <= 0 ? [] : [{ stream: '', sentence: `${lost} events that were acknowledged are not here.` }];
}

/** A name that no stream can have is shown as it stands. */
function nameOf(row: StreamId): string {
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

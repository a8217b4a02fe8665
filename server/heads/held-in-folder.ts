import { join } from 'node:path';
import type SQLite from 'better-sqlite3';
import { parseStreamText, type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { judgeEvent, startHead } from '../store/judge-event.ts';
import { changedStructure, isMarkedInUse } from '../store/sqlite-schema.ts';
import { HIGH_WATER_FILE } from './heads-in-folder.ts';
import { highWaterSentence } from './high-water.ts';
import { readRecord } from './read-folder.ts';
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

/** @throws {ServerError} tool-wrong, data-unreadable, data-foreign, data-newer, data-damaged. */
export async function heldInFolder(folder: string): Promise<HeldFolder> {
  return readRecord(folder, ({ database, hasLog }) => {
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
    for (const [stream, said] of saidIn(database)) {
      streams.set(stream, { ...(streams.get(stream) ?? { stream, events: [], forks: 0, follows: '' }), said });
    }
    return {
      streams: [...streams.values()],
      findings: [...ofFile(database, hasLog), ...missing(database, folder)],
      notes: oddForks(database),
    };
  });
}

/** How many events devices said that they have; a stream that a later one carries on lacks nothing. */
function saidIn(database: SQLite.Database): ReadonlyMap<string, number> {
  // A record of an older version has none of it.
  if (database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'said'").get() === undefined) return new Map();
  const rows = database.prepare<[], StreamId & { readonly said: number }>(`
    SELECT company, visit, device, epoch, max(seq) AS said FROM said
    WHERE NOT EXISTS (SELECT 1 FROM stream AS later WHERE later.company = said.company AND later.visit = said.visit
      AND later.device = said.device AND later.follows_epoch = said.epoch)
    GROUP BY company, visit, device, epoch`);
  return new Map(rows.all().map((row) => [nameOf(row), row.said]));
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

/** What the number beside the record tells; a server that writes it may be between the two. */
function missing(database: SQLite.Database, folder: string): readonly Finding[] {
  const last = database.prepare<[], number | null>('SELECT max(arrival) FROM event').pluck();
  const sentence = highWaterSentence(join(folder, HIGH_WATER_FILE), () => last.get() ?? 0, !isMarkedInUse(database));
  return sentence === undefined ? [] : [{ stream: '', sentence }];
}

/** A name that no stream can have is shown as it stands. */
function nameOf(row: StreamId): string {
  try {
    return streamText(row);
  } catch {
    return `${row.company}/${row.visit}/${row.device}/${row.epoch}`;
  }
}

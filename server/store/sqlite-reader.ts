import type { Database } from 'better-sqlite3';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { EventStore, StoredEvent, StreamEnd, StreamSummary, VisitSummary } from './event-store.ts';

interface StreamRow {
  readonly device: string;
  readonly epoch: number;
  readonly headSeq: number;
  readonly headHash: string;
  readonly firstReceivedAt: number;
  readonly lastReceivedAt: number;
  readonly forks: number;
  readonly sealed: 0 | 1;
  readonly clockOffset: number | null;
  readonly receivedBackwards: 0 | 1;
  readonly followsEpoch: number | null;
  readonly followsSeq: number | null;
  readonly followsHash: string | null;
}

type EventRow = Omit<StoredEvent, 'body'> & { readonly body: Buffer };

const EVENT_COLUMNS = `event.arrival, stream.device, stream.epoch, event.seq, event.hash, event.body,
  event.received_at AS receivedAt`;
/** The first and the last event of a stream, each one look-up in the index; a stream without events has neither. */
const STREAM_ENDS = `
  stream
  JOIN event AS first ON first.stream = stream.id AND first.seq = 1
  JOIN event AS last ON last.stream = stream.id AND last.seq = (SELECT max(seq) FROM event WHERE stream = stream.id)`;

/** The half of the SQLite store that reads; every query names the company. */
export function sqliteReader(database: Database): Omit<EventStore, 'open' | 'commit' | 'close'> {
  const visits = database.prepare<[string, number, number], VisitSummary>(`
    SELECT visit, count(*) AS streams, sum(last.seq) AS events,
      min(first.received_at) AS firstReceivedAt, max(last.received_at) AS lastReceivedAt,
      sum((SELECT count(*) FROM fork WHERE fork.stream = stream.id)) AS forks
    FROM ${STREAM_ENDS}
    WHERE company = ? GROUP BY visit ORDER BY max(last.arrival) DESC LIMIT ? OFFSET ?`);
  const streams = database.prepare<[string, string], StreamRow>(`
    SELECT device, epoch, last.seq AS headSeq, last.hash AS headHash,
      first.received_at AS firstReceivedAt, last.received_at AS lastReceivedAt,
      (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks,
      EXISTS (SELECT 1 FROM stream AS later WHERE later.company = stream.company AND later.visit = stream.visit
        AND later.device = stream.device AND later.follows_epoch = stream.epoch) AS sealed,
      last.clock_offset AS clockOffset,
      EXISTS (SELECT 1 FROM event AS later JOIN event AS before ON before.stream = later.stream AND before.seq = later.seq - 1
        WHERE later.stream = stream.id AND later.received_at < before.received_at) AS receivedBackwards,
      follows_epoch AS followsEpoch, follows_seq AS followsSeq, follows_hash AS followsHash
    FROM ${STREAM_ENDS}
    WHERE company = ? AND visit = ? ORDER BY device, epoch`);
  const events = database.prepare<[string, string, number, number], EventRow>(`
    SELECT ${EVENT_COLUMNS} FROM stream JOIN event ON event.stream = stream.id
    WHERE company = ? AND visit = ? AND arrival > ? ORDER BY arrival LIMIT ?`);
  const beyond = database.prepare<[{ company: string; visit: string; positions: string; limit: number }], EventRow>(`
    SELECT ${EVENT_COLUMNS} FROM stream
    LEFT JOIN json_each(@positions) AS position ON position.value ->> 'device' = device AND position.value ->> 'epoch' = epoch
    JOIN event ON event.stream = stream.id AND event.seq > coalesce(position.value ->> 'seq', 0)
    WHERE company = @company AND visit = @visit ORDER BY arrival LIMIT @limit`);
  const lastReceivedAt = database
    .prepare<[], number>('SELECT received_at FROM event ORDER BY arrival DESC LIMIT 1')
    .pluck();
  return {
    ...endsReader(database),
    lastReceivedAt: async () => lastReceivedAt.get(),
    visits: async (company, { limit, offset }) => visits.all(company, limit, offset),
    streams: async (company, visit) => streams.all(company, visit).map(toSummary),
    events: async (company, visit, { after, limit }) => events.all(company, visit, after, limit).map(toEvent),
    beyond: async (company, visit, positions, limit) =>
      beyond.all({ company, visit, positions: JSON.stringify(positions), limit }).map(toEvent),
  };
}

interface EndRow extends StreamId {
  readonly followsEpoch: number | null;
  readonly followsSeq: number | null;
  readonly followsHash: string | null;
  readonly seq: number;
  readonly hash: string;
  readonly forks: number;
}

/** What the heads of the server are taken from. */
function endsReader(database: Database) {
  const ofStream = 'company = ? AND visit = ? AND device = ? AND epoch = ?';
  const ends = database.prepare<[], EndRow>(`
    SELECT company, visit, device, epoch, last.seq, last.hash,
      follows_epoch AS followsEpoch, follows_seq AS followsSeq, follows_hash AS followsHash,
      (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks
    FROM stream JOIN event AS last ON last.stream = stream.id
      AND last.seq = (SELECT max(seq) FROM event WHERE stream = stream.id)
    ORDER BY stream.id`);
  const hashAt = database
    .prepare<[string, string, string, number, number], string>(
      `SELECT hash FROM stream JOIN event ON event.stream = stream.id WHERE ${ofStream} AND seq = ?`,
    )
    .pluck();
  const lastSeq = database
    .prepare<[string, string, string, number], number | null>(
      `SELECT max(seq) FROM stream JOIN event ON event.stream = stream.id WHERE ${ofStream}`,
    )
    .pluck();
  const times = database
    .prepare<[string, string, string, number, number], number>(
      `SELECT received_at FROM stream JOIN event ON event.stream = stream.id WHERE ${ofStream} AND seq <= ? ORDER BY seq`,
    )
    .pluck();
  const lastArrival = database.prepare<[], number | null>('SELECT max(arrival) FROM event').pluck();
  const key = ({ company, visit, device, epoch }: StreamId) => [company, visit, device, epoch] as const;
  return {
    ends: async () => ends.all().map(toEnd),
    hashAt: async (stream: StreamId, seq: number) => hashAt.get(...key(stream), seq),
    lastSeq: async (stream: StreamId) => lastSeq.get(...key(stream)) ?? 0,
    receivedTimes: async (stream: StreamId, upTo: number) => times.all(...key(stream), upTo),
    lastArrival: async () => lastArrival.get() ?? 0,
  } satisfies Partial<EventStore>;
}

function toEnd({ seq, hash, forks, company, visit, device, epoch, ...row }: EndRow): StreamEnd {
  return { stream: { company, visit, device, epoch }, head: { seq, hash }, forks, ...followsOf(row) };
}

type FollowsRow = Pick<StreamRow, 'followsEpoch' | 'followsSeq' | 'followsHash'>;

function followsOf({ followsEpoch, followsSeq, followsHash }: FollowsRow): Pick<StreamSummary, 'follows'> {
  if (followsEpoch === null || followsSeq === null || followsHash === null) return {};
  return { follows: { epoch: followsEpoch, head: { seq: followsSeq, hash: followsHash } } };
}

function toEvent(row: EventRow): StoredEvent {
  return { ...row, body: row.body.toString('utf8') };
}

function toSummary(row: StreamRow): StreamSummary {
  return {
    device: row.device,
    epoch: row.epoch,
    head: { seq: row.headSeq, hash: row.headHash },
    firstReceivedAt: row.firstReceivedAt,
    lastReceivedAt: row.lastReceivedAt,
    forks: row.forks,
    sealed: row.sealed === 1,
    receivedBackwards: row.receivedBackwards === 1,
    ...(row.clockOffset === null ? {} : { clockOffsetMs: row.clockOffset }),
    ...followsOf(row),
  };
}

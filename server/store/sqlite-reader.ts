import type { Database } from 'better-sqlite3';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { EventStore, PartEvent, StoredEvent, StreamEnd, VisitSummary } from './event-store.ts';
import { streamsReader } from './stream-summaries.ts';
import { type FollowsRow, followsOf, sumOf } from './summary-rows.ts';
import type { VisitActivity } from './visit-activity.ts';

type EventRow = Omit<StoredEvent, 'body'> & { readonly body: Buffer };

type PartRow = Omit<PartEvent, 'body'> & { readonly body: Buffer };

const EVENT_COLUMNS = `event.arrival, stream.device, stream.epoch, event.seq, event.hash, event.body,
  event.received_at AS receivedAt`;
/** A list lets others come in between so often: an acknowledgement waits for little more than this. */
const TURN_MS = 1;

/** The half of the SQLite store that reads; every query names the company. */
export function sqliteReader(
  database: Database,
  activity: VisitActivity,
): Omit<EventStore, 'open' | 'commit' | 'note' | 'close'> {
  const streams = streamsReader(database);
  const events = database.prepare<[string, string, number, number], EventRow>(`
    SELECT ${EVENT_COLUMNS} FROM stream JOIN event ON event.stream = stream.id
    WHERE company = ? AND visit = ? AND arrival > ? ORDER BY arrival LIMIT ?`);
  // A stream has no gaps: so many of each are all that can come first, and what lies behind them is not sorted.
  const beyond = database.prepare<[{ company: string; visit: string; positions: string; limit: number }], EventRow>(`
    WITH stream AS MATERIALIZED (
      SELECT id, device, epoch, coalesce((SELECT position.value ->> 'seq' FROM json_each(@positions) AS position
        WHERE position.value ->> 'device' = device AND position.value ->> 'epoch' = epoch), 0) AS past
      FROM main.stream WHERE company = @company AND visit = @visit)
    SELECT ${EVENT_COLUMNS} FROM stream
    CROSS JOIN event ON event.stream = stream.id AND event.seq > past AND event.seq <= past + @limit
    ORDER BY arrival LIMIT @limit`);
  const part = database.prepare<[string, string, string, number, number, number], PartRow>(`
    SELECT event.seq, event.hash, event.body, event.received_at AS receivedAt, event.arrival
    FROM stream JOIN event ON event.stream = stream.id
    WHERE company = ? AND visit = ? AND device = ? AND epoch = ? AND seq > ? ORDER BY seq LIMIT ?`);
  const lastReceivedAt = database
    .prepare<[], number>('SELECT received_at FROM event ORDER BY arrival DESC LIMIT 1')
    .pluck();
  return {
    ...endsReader(database),
    lastReceivedAt: async () => lastReceivedAt.get(),
    visits: async (company, page) => {
      const visits: VisitSummary[] = [];
      let began = performance.now();
      for (const visit of activity.newest(company, page)) {
        visits.push(activity.summary(company, visit, () => ({ visit, ...sumOf(streams.brief(company, visit)) })));
        if (performance.now() - began < TURN_MS) continue;
        await new Promise((resolve) => setImmediate(resolve));
        began = performance.now();
      }
      return visits;
    },
    streams: async (company, visit) => streams.whole(company, visit),
    events: async (company, visit, { after, limit }) => events.all(company, visit, after, limit).map(toEvent),
    part: async ({ company, visit, device, epoch }, { after, limit }) =>
      part.all(company, visit, device, epoch, after, limit).map((row) => ({ ...row, body: row.body.toString('utf8') })),
    beyond: async (company, visit, positions, limit) =>
      beyond.all({ company, visit, positions: JSON.stringify(positions), limit }).map(toEvent),
  };
}

interface EndRow extends StreamId, FollowsRow {
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

function toEvent(row: EventRow): StoredEvent {
  return { ...row, body: row.body.toString('utf8') };
}

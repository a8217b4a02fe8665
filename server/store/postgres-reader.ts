import type pg from 'pg';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { EventStore, PartEvent, StoredEvent, StreamEnd, VisitSummary } from './event-store.ts';
import {
  awaited,
  byDevice,
  type FollowsRow,
  followsOf,
  type SaidRow,
  type StreamRow,
  sumOf,
  toSummary,
} from './summary-rows.ts';

type EventRow = Omit<StoredEvent, 'body'> & { readonly body: Buffer };
type PartRow = Omit<PartEvent, 'body'> & { readonly body: Buffer };

const EVENT_COLUMNS = `event.arrival, stream.device, stream.epoch, event.seq, event.hash, event.body,
  event.received_at AS "receivedAt"`;
const FOLLOWS = `follows_epoch AS "followsEpoch", follows_seq AS "followsSeq", follows_hash AS "followsHash"`;
const OF_STREAM = 'stream.company = $1 AND stream.visit = $2 AND stream.device = $3 AND stream.epoch = $4';
const LAST = `JOIN LATERAL (SELECT arrival, seq, hash, received_at, clock_offset FROM event
  WHERE event.stream = stream.id ORDER BY seq DESC LIMIT 1) AS last ON true`;

const key = ({ company, visit, device, epoch }: StreamId) => [company, visit, device, epoch];

/** The half of the PostgreSQL store that reads; every query names the company. Nothing of it is held in memory. */
export function postgresReader(pool: Pick<pg.Pool, 'query'>): Omit<EventStore, 'open' | 'commit' | 'note' | 'close'> {
  const all = async <Row extends pg.QueryResultRow>(text: string, values: readonly unknown[]) =>
    (await pool.query<Row>(text, [...values])).rows;
  const one = async <Row extends pg.QueryResultRow>(text: string, values: readonly unknown[] = []) =>
    (await pool.query<Row>(text, [...values])).rows[0];
  return {
    visits: async (company, { limit, offset }) => {
      const names = (await all<{ visit: string }>(NEWEST, [company, limit, offset])).map(({ visit }) => visit);
      const [streams, said] = await Promise.all([
        all<StreamRow & { visit: string }>(STREAMS, [company, names]),
        all<SaidRow & { visit: string }>(ONLY_SAID, [company, names]),
      ]);
      return names.flatMap((visit): VisitSummary[] => {
        const of = [
          ...streams.filter((row) => row.visit === visit).map(toSummary),
          ...said.filter((row) => row.visit === visit).map((row) => awaited(company, visit, row)),
        ];
        return of.length === 0 ? [] : [{ visit, ...sumOf(of) }];
      });
    },
    streams: async (company, visit) => {
      const [streams, said] = await Promise.all([
        all<StreamRow & { visit: string }>(STREAMS, [company, [visit]]),
        all<SaidRow>(ONLY_SAID, [company, [visit]]),
      ]);
      const back = await all<{ id: number }>(BACKWARDS, [streams.map(({ id }) => id)]);
      const backwards = new Set(back.map(({ id }) => id));
      return [
        ...streams.map((row) => ({ ...toSummary(row), receivedBackwards: backwards.has(row.id) })),
        ...said.map((row) => ({ ...awaited(company, visit, row), receivedBackwards: false })),
      ].sort(byDevice);
    },
    events: async (company, visit, { after, limit }) =>
      (
        await all<EventRow>(
          `SELECT ${EVENT_COLUMNS} FROM stream JOIN event ON event.stream = stream.id
          WHERE company = $1 AND visit = $2 AND arrival > $3 ORDER BY arrival LIMIT $4`,
          [company, visit, after, limit],
        )
      ).map(toEvent),
    beyond: async (company, visit, positions, limit) =>
      (
        await all<EventRow>(BEYOND, [
          company,
          visit,
          positions.map(({ device }) => device),
          positions.map(({ epoch }) => epoch),
          positions.map(({ seq }) => seq),
          limit,
        ])
      ).map(toEvent),
    part: async (stream, { after, limit }) =>
      (
        await all<PartRow>(
          `SELECT event.seq, event.hash, event.body, event.received_at AS "receivedAt", event.arrival
          FROM stream JOIN event ON event.stream = stream.id WHERE ${OF_STREAM} AND seq > $5 ORDER BY seq LIMIT $6`,
          [...key(stream), after, limit],
        )
      ).map((row) => ({ ...row, body: row.body.toString('utf8') })),
    ends: async () => (await all<EndRow>(ENDS, [])).map(toEnd),
    hashAt: async (stream, seq) =>
      (
        await one<{ hash: string }>(
          `SELECT hash FROM stream JOIN event ON event.stream = stream.id WHERE ${OF_STREAM} AND seq = $5`,
          [...key(stream), seq],
        )
      )?.hash,
    lastSeq: async (stream) =>
      (
        await one<{ seq: number | null }>(
          `SELECT max(seq) AS seq FROM stream JOIN event ON event.stream = stream.id WHERE ${OF_STREAM}`,
          key(stream),
        )
      )?.seq ?? 0,
    receivedTimes: async (stream, upTo) =>
      (
        await all<{ at: number }>(
          `SELECT received_at AS at FROM stream JOIN event ON event.stream = stream.id
          WHERE ${OF_STREAM} AND seq <= $5 ORDER BY seq`,
          [...key(stream), upTo],
        )
      ).map(({ at }) => at),
    lastArrival: async () => (await one<{ last: number | null }>('SELECT max(arrival) AS last FROM event'))?.last ?? 0,
    lastReceivedAt: async () =>
      (await one<{ at: number }>('SELECT received_at AS at FROM event ORDER BY arrival DESC LIMIT 1'))?.at,
  };
}

/** What came of a visit orders it before what was only said of it. */
const NEWEST = `
WITH came AS (SELECT visit, max(last.arrival) AS at FROM stream ${LAST} WHERE company = $1 GROUP BY visit),
  spoken AS (SELECT visit, max(id) AS at FROM said
    WHERE company = $1 AND NOT EXISTS (SELECT FROM came WHERE came.visit = said.visit) GROUP BY visit)
SELECT visit FROM (SELECT visit, 1 AS came, at FROM came UNION ALL SELECT visit, 0, at FROM spoken) AS listed
ORDER BY came DESC, at DESC LIMIT $2 OFFSET $3`;

const STREAMS = `
SELECT stream.id, stream.visit, device, epoch, last.seq AS "headSeq", last.hash AS "headHash",
  first.received_at AS "firstReceivedAt", last.received_at AS "lastReceivedAt",
  (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks,
  EXISTS (SELECT FROM stream AS later WHERE later.company = stream.company AND later.visit = stream.visit
    AND later.device = stream.device AND later.follows_epoch = stream.epoch) AS sealed,
  last.clock_offset AS "clockOffset",
  (SELECT max(said.seq) FROM said WHERE said.company = stream.company AND said.visit = stream.visit
    AND said.device = stream.device AND said.epoch = stream.epoch) AS said,
  ${FOLLOWS}
FROM stream JOIN event AS first ON first.stream = stream.id AND first.seq = 1 ${LAST}
WHERE stream.company = $1 AND stream.visit = ANY ($2::text[])`;

const ONLY_SAID = `
SELECT visit, device, epoch, max(seq) AS said, min(said_at) AS "firstSaidAt", max(said_at) AS "lastSaidAt" FROM said
WHERE company = $1 AND visit = ANY ($2::text[]) AND NOT EXISTS (SELECT FROM stream
  JOIN event ON event.stream = stream.id WHERE stream.company = said.company AND stream.visit = said.visit
    AND stream.device = said.device AND stream.epoch = said.epoch)
GROUP BY visit, device, epoch`;

/** Clocks of several servers differ a little, and a batch waits a little. */
const CLOCKS_DIFFER_MS = 2_000;

/** Streams whose times of receipt go back anywhere. */
const BACKWARDS = `
SELECT DISTINCT stream AS id FROM (
  SELECT stream, received_at + ${CLOCKS_DIFFER_MS} < lag(received_at) OVER (PARTITION BY stream ORDER BY seq) AS back
  FROM event WHERE stream = ANY ($1::bigint[])) AS read WHERE back`;

/** A stream has no gaps: so many of each are all that can come first, and what lies behind them is not sorted. */
const BEYOND = `
SELECT ${EVENT_COLUMNS} FROM stream
LEFT JOIN unnest($3::text[], $4::bigint[], $5::bigint[]) AS position (device, epoch, seq)
  ON position.device = stream.device AND position.epoch = stream.epoch
JOIN event ON event.stream = stream.id AND event.seq > coalesce(position.seq, 0)
  AND event.seq <= coalesce(position.seq, 0) + $6
WHERE company = $1 AND visit = $2 ORDER BY arrival LIMIT $6`;

const ENDS = `
SELECT company, visit, device, epoch, last.seq, last.hash, ${FOLLOWS},
  (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks
FROM stream ${LAST} ORDER BY stream.id`;

interface EndRow extends StreamId, FollowsRow {
  readonly seq: number;
  readonly hash: string;
  readonly forks: number;
}

function toEnd({ seq, hash, forks, company, visit, device, epoch, ...row }: EndRow): StreamEnd {
  return { stream: { company, visit, device, epoch }, head: { seq, hash }, forks, ...followsOf(row) };
}

function toEvent(row: EventRow): StoredEvent {
  return { ...row, body: row.body.toString('utf8') };
}

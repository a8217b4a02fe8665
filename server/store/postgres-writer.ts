import type pg from 'pg';
import { type Hash, type Head, type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { inTransaction } from '../database/open-postgres.ts';
import { ServerError } from '../errors.ts';
import type { CommitOutcome, EventStore, OpenOutcome, ReceivedEvent, SaidHead } from './event-store.ts';
import { contradicts, judgeEvent, startHead } from './judge-event.ts';
import { lockVisits } from './postgres-locks.ts';

/** A stream while a batch is judged: where it ends, and where a later epoch ended it for good. */
interface OpenStream {
  readonly stream: StreamId;
  id: number | undefined;
  head: Head;
  readonly sealedAt: number | undefined;
  /** Hashes of its events that a batch names again, by their numbers; new ones are added. */
  readonly held: Map<number, Hash>;
}

interface StreamRow {
  readonly id: number | null;
  readonly seq: number | null;
  readonly hash: string | null;
  readonly sealedAt: number | null;
}

/**
 * The half of the PostgreSQL store that writes. Each call is one transaction, on the disk when it resolves; each reads
 * where streams end anew, under a lock of their visits, since other servers write them too.
 */
export function postgresWriter(pool: pg.Pool): Pick<EventStore, 'open' | 'commit' | 'note'> {
  const wholly = <Result>(visits: readonly StreamId[], work: (client: pg.PoolClient) => Promise<Result>) =>
    inTransaction(pool, async (client) => {
      await lockVisits(client, visits);
      return work(client);
    }).catch(throwServerError);
  return {
    open: (stream, follows) =>
      follows === undefined
        ? readStreams(pool, [stream]).then(([opened]) => openedAs(opened as OpenStream), throwServerError)
        : wholly([stream], (client) => openBehind(client, stream, follows)),
    commit: (batch) => wholly(streamsOf(batch), (client) => commit(client, batch)),
    note: (said) => wholly(streamsOf(said), (client) => note(client, said)),
  };
}

const streamsOf = (all: readonly { readonly stream: StreamId }[]) => all.map(({ stream }) => stream);

function openedAs({ head, sealedAt }: OpenStream): OpenOutcome {
  return sealedAt !== undefined && head.seq >= sealedAt ? { kind: 'sealed' } : { kind: 'open', head };
}

async function openBehind(
  client: pg.PoolClient,
  stream: StreamId,
  follows: { readonly epoch: number; readonly head: Head },
): Promise<OpenOutcome> {
  const [opened, older] = await readStreams(client, [stream, { ...stream, epoch: follows.epoch }]);
  if (opened === undefined || older === undefined) throw new Error('a stream was not looked up');
  if (opened.id === undefined) {
    if (follows.epoch >= stream.epoch || contradicts(older.head, follows.head)) return { kind: 'unlinked' };
    const { epoch, head } = follows;
    await client.query(
      `INSERT INTO stream (company, visit, device, epoch, follows_epoch, follows_seq, follows_hash)
      VALUES ($1, $2, $3, $4, $5, $6, $7)`,
      [stream.company, stream.visit, stream.device, stream.epoch, epoch, head.seq, head.hash],
    );
  }
  return openedAs(opened);
}

async function commit(client: pg.PoolClient, batch: readonly ReceivedEvent[]): Promise<readonly CommitOutcome[]> {
  const names = new Map(batch.map(({ stream }) => [streamText(stream), stream]));
  const opened = await readStreams(client, [...names.values()]);
  const streams = new Map([...names.keys()].map((name, at) => [name, opened[at] as OpenStream]));
  // Events of one connection stand together and share its stream.
  const texts = new Map<StreamId, string>();
  const nameOf = (stream: StreamId) => {
    const text = texts.get(stream) ?? streamText(stream);
    texts.set(stream, text);
    return text;
  };
  const of = batch.map(({ stream }) => streams.get(nameOf(stream)) as OpenStream);
  await readHeld(client, batch, of);
  const [stored, forks]: [number[], number[]] = [[], []];
  const outcomes = batch.map((event, at): CommitOutcome => {
    const stream = of[at] as OpenStream;
    const outcome = judgeEvent(stream.head, event, (seq) => stream.held.get(seq));
    if (outcome.kind === 'fork') forks.push(at);
    if (outcome.kind !== 'stored') return outcome;
    if (stream.sealedAt !== undefined && event.seq > stream.sealedAt) return { kind: 'sealed' };
    stored.push(at);
    stream.head = { seq: event.seq, hash: event.hash };
    stream.held.set(event.seq, event.hash);
    return outcome;
  });
  await insertStreams(client, [...new Set(stored.map((at) => of[at] as OpenStream))]);
  const rows = (ats: readonly number[]) =>
    ats.map((at) => ({ id: (of[at] as OpenStream).id, ...(batch[at] as ReceivedEvent) }));
  await insertEvents(client, rows(stored));
  await insertForks(client, rows(forks));
  return outcomes;
}

const READ_STREAMS = `
SELECT stream.id, last.seq, last.hash,
  (SELECT min(later.follows_seq) FROM stream AS later WHERE later.company = asked.company AND later.visit = asked.visit
    AND later.device = asked.device AND later.follows_epoch = asked.epoch) AS "sealedAt"
FROM unnest($1::text[], $2::text[], $3::text[], $4::bigint[]) WITH ORDINALITY AS asked (company, visit, device, epoch, at)
LEFT JOIN stream ON stream.company = asked.company AND stream.visit = asked.visit AND stream.device = asked.device
  AND stream.epoch = asked.epoch
LEFT JOIN LATERAL (SELECT seq, hash FROM event WHERE event.stream = stream.id ORDER BY seq DESC LIMIT 1) AS last ON true
ORDER BY asked.at`;

async function readStreams(client: pg.Pool | pg.PoolClient, streams: readonly StreamId[]): Promise<OpenStream[]> {
  const { rows } = await client.query<StreamRow>({
    name: 'read-streams',
    text: READ_STREAMS,
    values: columnsOf(streams),
  });
  return rows.map(({ id, seq, hash, sealedAt }, at) => {
    const stream = streams[at] as StreamId;
    return {
      stream,
      id: id ?? undefined,
      head: seq === null || hash === null ? startHead(stream) : { seq, hash },
      sealedAt: sealedAt ?? undefined,
      held: new Map(),
    };
  });
}

const columnsOf = (streams: readonly StreamId[]) => [
  streams.map(({ company }) => company),
  streams.map(({ visit }) => visit),
  streams.map(({ device }) => device),
  streams.map(({ epoch }) => epoch),
];

/** Of what came again, or contradicts: which hash stands at its number. */
async function readHeld(
  client: pg.PoolClient,
  batch: readonly ReceivedEvent[],
  of: readonly OpenStream[],
): Promise<void> {
  const again = batch.flatMap(({ seq }, at) => {
    const stream = of[at] as OpenStream;
    return stream.id !== undefined && seq <= stream.head.seq ? [{ stream, seq }] : [];
  });
  if (again.length === 0) return;
  const { rows } = await client.query<{ readonly stream: number; readonly seq: number; readonly hash: string }>({
    name: 'read-held',
    text: `SELECT event.stream, event.seq, event.hash FROM unnest($1::bigint[], $2::bigint[]) AS asked (stream, seq)
      JOIN event ON event.stream = asked.stream AND event.seq = asked.seq`,
    values: [again.map(({ stream }) => stream.id), again.map(({ seq }) => seq)],
  });
  const byId = new Map(again.map(({ stream }) => [stream.id, stream]));
  for (const { stream, seq, hash } of rows) byId.get(stream)?.held.set(seq, hash);
}

async function insertStreams(client: pg.PoolClient, streams: readonly OpenStream[]): Promise<void> {
  const fresh = streams.filter(({ id }) => id === undefined);
  if (fresh.length === 0) return;
  const { rows } = await client.query<StreamId & { readonly id: number }>({
    name: 'insert-streams',
    text: `INSERT INTO stream (company, visit, device, epoch)
      SELECT * FROM unnest($1::text[], $2::text[], $3::text[], $4::bigint[]) RETURNING id, company, visit, device, epoch`,
    values: columnsOf(streamsOf(fresh)),
  });
  const ids = new Map(rows.map((row) => [streamText(row), row.id]));
  for (const one of fresh) one.id = ids.get(streamText(one.stream));
}

type Row = ReceivedEvent & { readonly id: number | undefined };

const rowColumns = (rows: readonly Row[]) => [
  rows.map(({ id }) => id),
  rows.map(({ seq }) => seq),
  rows.map(({ hash }) => hash),
  rows.map(({ body }) => Buffer.from(body, 'utf8')),
  rows.map(({ receivedAt }) => receivedAt),
];

async function insertEvents(client: pg.PoolClient, rows: readonly Row[]): Promise<void> {
  if (rows.length === 0) return;
  await client.query({
    name: 'insert-events',
    text: `INSERT INTO event (stream, seq, hash, body, received_at, clock_offset)
      SELECT stream, seq, hash, body, received_at, clock_offset
      FROM unnest($1::bigint[], $2::bigint[], $3::text[], $4::bytea[], $5::bigint[], $6::bigint[])
        WITH ORDINALITY AS came (stream, seq, hash, body, received_at, clock_offset, at) ORDER BY at`,
    values: [...rowColumns(rows), rows.map(({ clockOffsetMs }) => clockOffsetMs ?? null)],
  });
}

async function insertForks(client: pg.PoolClient, rows: readonly Row[]): Promise<void> {
  const kept = rows.filter(({ id }) => id !== undefined);
  if (kept.length === 0) return;
  await client.query(
    `INSERT INTO fork (stream, seq, hash, body, received_at)
    SELECT * FROM unnest($1::bigint[], $2::bigint[], $3::text[], $4::bytea[], $5::bigint[]) ON CONFLICT DO NOTHING`,
    rowColumns(kept),
  );
}

/** What is beyond what is held, and beyond what was said before. */
async function note(client: pg.PoolClient, said: readonly SaidHead[]): Promise<void> {
  const opened = await readStreams(client, streamsOf(said));
  for (const [at, { stream, head, saidAt }] of said.entries()) {
    if (head.seq <= (opened[at]?.head.seq ?? 0)) continue;
    await client.query(
      `INSERT INTO said (company, visit, device, epoch, seq, hash, said_at) SELECT $1, $2, $3, $4, $5, $6, $7
      WHERE $5 > coalesce((SELECT max(seq) FROM said WHERE company = $1 AND visit = $2 AND device = $3 AND epoch = $4), 0)`,
      [stream.company, stream.visit, stream.device, stream.epoch, head.seq, head.hash, saidAt],
    );
  }
}

const DISK_FULL = '53100';

function throwServerError(error: unknown): never {
  if (error instanceof ServerError) throw error;
  const full = (error as { readonly code?: string }).code === DISK_FULL;
  throw new ServerError(full ? 'data-full' : 'server-failed', '', error);
}

import SQLite, { type Database } from 'better-sqlite3';
import { type Hash, type Head, type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { ServerError } from '../errors.ts';
import type { CommitOutcome, EventStore, OpenOutcome, ReceivedEvent, SaidHead } from './event-store.ts';
import { contradicts, judgeEvent, startHead } from './judge-event.ts';
import type { VisitActivity } from './visit-activity.ts';

/** A stream while a batch is judged: where it ends, and where a later epoch ended it for good. */
interface OpenStream {
  id: number | undefined;
  head: Head;
  readonly sealedAt: number | undefined;
}

/** So many streams' ends are held in memory. */
const MOST_KNOWN = 20_000;

/** The half of the SQLite store that writes. Each call is one transaction, on the disk when it returns. */
export function sqliteWriter(
  database: Database,
  activity: VisitActivity,
): Pick<EventStore, 'open' | 'commit' | 'note'> {
  const statements = prepareStatements(database);
  /** Where streams end, as this process alone writes them; read anew after anything that failed or that seals. */
  const known = new Map<string, OpenStream>();

  function openStream(stream: StreamId): OpenStream {
    const name = streamText(stream);
    const before = known.get(name);
    if (before !== undefined) return before;
    if (known.size >= MOST_KNOWN) known.clear();
    const opened = readStream(stream);
    known.set(name, opened);
    return opened;
  }

  function readStream(stream: StreamId): OpenStream {
    const id = statements.findStream.get(stream.company, stream.visit, stream.device, stream.epoch);
    const sealedAt = statements.sealedAt.get(stream.company, stream.visit, stream.device, stream.epoch) ?? undefined;
    const head = id === undefined ? undefined : statements.head.get(id);
    return { id, head: head ?? startHead(stream), sealedAt };
  }

  function insertStream(stream: StreamId, follows?: { readonly epoch: number; readonly head: Head }): number {
    const { company, visit, device, epoch } = stream;
    const link = follows === undefined ? [null, null, null] : [follows.epoch, follows.head.seq, follows.head.hash];
    return Number(statements.insertStream.run(company, visit, device, epoch, ...link).lastInsertRowid);
  }

  const open = database.transaction((stream: StreamId, follows?: { epoch: number; head: Head }): OpenOutcome => {
    const opened = openStream(stream);
    if (opened.id === undefined && follows !== undefined) {
      const older = openStream({ ...stream, epoch: follows.epoch });
      if (follows.epoch >= stream.epoch || contradicts(older.head, follows.head)) return { kind: 'unlinked' };
      insertStream(stream, follows);
      known.clear();
    }
    const atItsEnd = opened.sealedAt !== undefined && opened.head.seq >= opened.sealedAt;
    return atItsEnd ? { kind: 'sealed' } : { kind: 'open', head: opened.head };
  });

  function commitOne(opened: OpenStream, event: ReceivedEvent): CommitOutcome {
    const id = opened.id;
    const held = (seq: number): Hash | undefined => (id === undefined ? undefined : statements.hashAt.get(id, seq));
    const outcome = judgeEvent(opened.head, event, held);
    if (outcome.kind === 'stored') {
      if (opened.sealedAt !== undefined && event.seq > opened.sealedAt) return { kind: 'sealed' };
      opened.id ??= insertStream(event.stream);
      const body = Buffer.from(event.body, 'utf8');
      statements.insertEvent.run(opened.id, event.seq, event.hash, body, event.receivedAt, event.clockOffsetMs ?? null);
      opened.head = { seq: event.seq, hash: event.hash };
    } else if (outcome.kind === 'fork' && id !== undefined) {
      const { seq, hash, receivedAt } = event;
      statements.insertFork.run({ stream: id, seq, hash, body: Buffer.from(event.body, 'utf8'), receivedAt });
    }
    return outcome;
  }

  const commit = database.transaction((batch: readonly ReceivedEvent[]): CommitOutcome[] => {
    let stream: StreamId | undefined;
    let opened: OpenStream | undefined;
    return batch.map((event) => {
      // Events of one connection stand together and share its stream.
      if (opened === undefined || event.stream !== stream) opened = openStream(event.stream);
      stream = event.stream;
      return commitOne(opened, event);
    });
  });

  const note = database.transaction((said: readonly SaidHead[]): readonly StreamId[] =>
    said.flatMap(({ stream, head: { seq, hash }, saidAt }) => {
      const { company, visit, device, epoch } = stream;
      const before = statements.said.get(company, visit, device, epoch) ?? 0;
      if (seq <= Math.max(openStream(stream).head.seq, before)) return [];
      statements.insertSaid.run(company, visit, device, epoch, seq, hash, saidAt);
      return [stream];
    }),
  );

  /** What was rolled back is not known. */
  const wholly = <Result>(work: () => Result): Result => {
    try {
      return asServerErrors(work);
    } catch (error) {
      known.clear();
      throw error;
    }
  };

  return {
    note: async (said) => {
      for (const stream of wholly(() => note.immediate(said))) activity.touched(stream);
    },
    open: async (stream, follows) => {
      // Where nothing is to be linked, nothing is written.
      if (follows === undefined) return wholly(() => open.deferred(stream));
      const outcome = wholly(() => open.immediate(stream, follows));
      activity.changed(stream);
      return outcome;
    },
    commit: async (batch) => {
      const outcomes = wholly(() => commit.immediate(batch));
      let touched: StreamId | undefined;
      for (const [at, { stream }] of batch.entries()) {
        if (outcomes[at]?.kind === 'fork') activity.changed(stream);
        if (outcomes[at]?.kind !== 'stored' || stream === touched) continue;
        activity.touched(stream);
        touched = stream;
      }
      return outcomes;
    },
  };
}

function prepareStatements(database: Database) {
  const ofDevice = 'company = ? AND visit = ? AND device = ?';
  return {
    findStream: database
      .prepare<[string, string, string, number], number>(`SELECT id FROM stream WHERE ${ofDevice} AND epoch = ?`)
      .pluck(),
    sealedAt: database
      .prepare<[string, string, string, number], number | null>(
        `SELECT min(follows_seq) FROM stream WHERE ${ofDevice} AND follows_epoch = ?`,
      )
      .pluck(),
    head: database.prepare<[number], Head>('SELECT seq, hash FROM event WHERE stream = ? ORDER BY seq DESC LIMIT 1'),
    hashAt: database.prepare<[number, number], Hash>('SELECT hash FROM event WHERE stream = ? AND seq = ?').pluck(),
    insertStream: database.prepare(
      'INSERT INTO stream (company, visit, device, epoch, follows_epoch, follows_seq, follows_hash) VALUES (?, ?, ?, ?, ?, ?, ?)',
    ),
    insertEvent: database.prepare(
      'INSERT INTO event (stream, seq, hash, body, received_at, clock_offset) VALUES (?, ?, ?, ?, ?, ?)',
    ),
    said: database
      .prepare<[string, string, string, number], number | null>(
        `SELECT max(seq) FROM said WHERE ${ofDevice} AND epoch = ?`,
      )
      .pluck(),
    insertSaid: database.prepare(
      'INSERT INTO said (company, visit, device, epoch, seq, hash, said_at) VALUES (?, ?, ?, ?, ?, ?, ?)',
    ),
    insertFork: database.prepare(`
      INSERT INTO fork (stream, seq, hash, body, received_at) SELECT @stream, @seq, @hash, @body, @receivedAt
      WHERE NOT EXISTS (SELECT 1 FROM fork WHERE stream = @stream AND seq = @seq AND hash = @hash)`),
  };
}

function asServerErrors<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (error instanceof SQLite.SqliteError) {
      throw new ServerError(error.code === 'SQLITE_FULL' ? 'data-full' : 'server-failed', '', error);
    }
    throw error;
  }
}

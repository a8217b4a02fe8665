import { type Entry, emptyHead, type Head, type StreamId, streamText } from '../../../grammar/visit/envelope.ts';
import type { Acknowledgement, Follows } from '../../../grammar/visit/record-lines.ts';
import { RecordError } from '../errors.ts';
import { inTurn } from '../in-turn.ts';
import type { SentSoFar } from '../send-unsent.ts';
import { laterAcknowledgement, prepareEntries, type VisitLog } from '../visit-log.ts';
import { isSevered, type RecordDatabase, type StreamRow } from './record-database.ts';
import { sha256 } from './sha256.ts';

/** A log in the browser's database, of which other tabs may hold a second view. */
export interface IndexedDbLog extends VisitLog {
  /** Reads where the stream ends now, after another tab has written. */
  refresh(): Promise<Head>;
}

/**
 * Opens, or begins, a stream in the browser's database. Every append is on the disk (`durability: 'strict'`) before it
 * resolves.
 * @throws {RecordError} log-newer, log-full, log-unwritable.
 */
export async function openIndexedDbLog(
  database: RecordDatabase,
  stream: StreamId,
  follows?: Follows,
): Promise<IndexedDbLog> {
  const key = streamText(stream);
  const begun: StreamRow = { key, stream, begunAt: Date.now(), ...(follows === undefined ? {} : { follows }) };
  let row = begun;
  await database
    .write(['streams'], async (transaction) => {
      const found = await transaction.objectStore('streams').get(key);
      if (found === undefined) await transaction.objectStore('streams').add(begun);
      else row = found;
    })
    .catch((error) => {
      throw asWritingError(error);
    });
  const log = new BrowserLog(database, key, row, await emptyHead(stream, sha256));
  await log.refresh();
  return log;
}

/** The streams this browser holds, the latest begun first. */
export async function listStreams(database: RecordDatabase): Promise<readonly StreamRow[]> {
  const rows = await database.read((connection) => connection.getAll('streams'));
  return rows.sort((a, b) => b.begunAt - a.begunAt);
}

/** The streams of which the server was not told to hold all, the oldest first, with how far each has come. */
export async function listUnsent(database: RecordDatabase): Promise<readonly SentSoFar[]> {
  const rows = (await listStreams(database)).toReversed();
  const sent = await database.read((connection) => {
    const events = connection.transaction('events').store;
    return Promise.all(
      rows.map(async ({ key, stream, acknowledged }) => {
        const last = await events.openKeyCursor(IDBKeyRange.bound([key, 0], [key, Number.MAX_SAFE_INTEGER]), 'prev');
        return { stream, written: last?.primaryKey[1] ?? 0, acknowledged: acknowledged?.seq ?? 0 };
      }),
    );
  });
  return sent.filter(({ written, acknowledged }) => acknowledged < written);
}

class BrowserLog implements IndexedDbLog {
  readonly stream: StreamId;
  readonly follows?: Follows;
  readonly #database: RecordDatabase;
  readonly #key: string;
  readonly #run = inTurn();
  #head: Head;
  #acknowledged: Acknowledgement | undefined;
  #open = true;

  constructor(database: RecordDatabase, key: string, row: StreamRow, start: Head) {
    this.#database = database;
    this.#key = key;
    this.stream = row.stream;
    if (row.follows !== undefined) this.follows = row.follows;
    this.#acknowledged = row.acknowledged;
    this.#head = start;
  }

  head(): Head {
    return this.#head;
  }

  acknowledged(): Acknowledgement | undefined {
    return this.#acknowledged;
  }

  append(bodies: readonly string[]): Promise<readonly Entry[]> {
    return this.#run(async () => {
      this.#demandOpen();
      // Hashed before the transaction opens: awaiting anything else inside would end it.
      const entries = await prepareEntries(this.#head, bodies, sha256);
      const last = entries.at(-1);
      if (last === undefined) return entries;
      await this.#writeEntries(entries, last);
      this.#head = { seq: last.seq, hash: last.hash };
      return entries;
    });
  }

  async read(from: number, limit?: number): Promise<readonly Entry[]> {
    if (limit === 0) return [];
    const first = Math.max(from, 1);
    const last = limit === undefined ? Number.MAX_SAFE_INTEGER : first + limit - 1;
    const range = IDBKeyRange.bound([this.#key, first], [this.#key, last]);
    const rows = await this.#twice(() => this.#database.read((connection) => connection.getAll('events', range)));
    return rows.map(({ seq, hash, body }) => ({ seq, hash, body }));
  }

  acknowledge(came: Acknowledgement): Promise<void> {
    return this.#run(async () => {
      this.#demandOpen();
      const later = laterAcknowledgement(this.#acknowledged, came);
      if (later === this.#acknowledged) return;
      await this.#twice(() =>
        this.#database.write(
          ['streams'],
          async (transaction) => {
            const streams = transaction.objectStore('streams');
            const row = await streams.get(this.#key);
            if (row !== undefined) await streams.put({ ...row, acknowledged: later });
          },
          // The next event's strict transaction takes it along; lost, it is told anew by the server.
          'relaxed',
        ),
      );
      this.#acknowledged = later;
    });
  }

  refresh(): Promise<Head> {
    return this.#run(async () => {
      const found = await this.#twice(() => this.#databaseHead());
      if (found !== undefined) this.#head = found;
      return this.#head;
    });
  }

  close(): Promise<void> {
    return this.#run(async () => {
      this.#open = false;
    });
  }

  /** Where the connection was lost on the way, what is in the database says whether the events were written. */
  async #writeEntries(entries: readonly Entry[], last: Entry): Promise<void> {
    try {
      await this.#tryToWrite(entries);
    } catch (error) {
      if (!isSevered(error)) throw asWritingError(error);
      const found = await this.#databaseHead();
      if (found?.hash === last.hash) return;
      await this.#tryToWrite(entries).catch((again) => {
        throw asWritingError(again);
      });
    }
  }

  #tryToWrite(entries: readonly Entry[]): Promise<void> {
    return this.#database.write(['events'], async (transaction) => {
      const events = transaction.objectStore('events');
      const newest = await events.openKeyCursor(this.#wholeStream(), 'prev');
      if ((newest?.primaryKey[1] ?? 0) !== this.#head.seq) throw new RecordError('log-busy', 'of this visit');
      for (const { seq, hash, body } of entries) await events.add({ key: this.#key, seq, hash, body });
    });
  }

  #databaseHead(): Promise<Head | undefined> {
    return this.#database.read(async (connection) => {
      const cursor = await connection.transaction('events').store.openCursor(this.#wholeStream(), 'prev');
      return cursor === null ? undefined : { seq: cursor.value.seq, hash: cursor.value.hash };
    });
  }

  #wholeStream(): IDBKeyRange {
    return IDBKeyRange.bound([this.#key, 0], [this.#key, Number.MAX_SAFE_INTEGER]);
  }

  /** Once more over a new connection, where the browser had severed the old one. */
  async #twice<Result>(work: () => Promise<Result>): Promise<Result> {
    return work().catch((error) => {
      if (isSevered(error)) return work();
      throw error;
    });
  }

  #demandOpen(): void {
    if (!this.#open) throw new RecordError('log-closed');
  }
}

function asWritingError(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error;
  if (error.name === 'QuotaExceededError') return new RecordError('log-full', '', error);
  if (error.name === 'ConstraintError') return new RecordError('log-busy', 'of this visit', error);
  return new RecordError('log-unwritable', error.name, error);
}

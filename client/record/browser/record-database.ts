import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Entry, StreamId } from '../../../grammar/visit/envelope.ts';
import type { Acknowledgement, Follows } from '../../../grammar/visit/record-lines.ts';
import { RecordError } from '../errors.ts';

/** What the browser keeps of a stream beside its events. */
export interface StreamRow {
  /** streamText of `stream`. */
  readonly key: string;
  readonly stream: StreamId;
  readonly follows?: Follows;
  readonly acknowledged?: Acknowledgement;
  /** The device's wall clock when the stream was begun, in milliseconds since 1970. */
  readonly begunAt: number;
}

interface EventRow extends Entry {
  readonly key: string;
}

interface RecordSchema extends DBSchema {
  streams: { key: string; value: StreamRow };
  events: { key: [string, number]; value: EventRow };
  /** What was kept of dictations: WAV files by their SHA-256 in hex. */
  sounds: { key: string; value: { readonly sha256: string; readonly file: Uint8Array<ArrayBuffer> } };
  /** Holds nothing for long: see `leaveTornLog`. */
  scratch: { key: number; value: string };
}

type Stores = ('streams' | 'events' | 'sounds' | 'scratch')[];
type Connection = IDBPDatabase<RecordSchema>;
export type WriteTransaction = ReturnType<typeof begin>;

/** 2: with `sounds`. */
const VERSION = 2;

/**
 * The page's database of records. A connection that the browser severs (a phone does so to a page in the background)
 * is opened again at the next use.
 */
export class RecordDatabase {
  readonly #name: string;
  #connection: Promise<Connection> | undefined;
  #torn: Promise<void> | undefined;

  constructor(name = 'readback') {
    this.#name = name;
  }

  /** Resolves when the record no longer stands behind a write that an earlier crash tore; see `leaveTornLog`. */
  async settled(): Promise<void> {
    this.#torn ??= leaveTornLog(await this.#open());
    await this.#torn;
  }

  async read<Result>(work: (connection: Connection) => Promise<Result>): Promise<Result> {
    return this.#withConnection(work);
  }

  /**
   * One transaction, which is on the disk when this resolves (where `durability` is strict). `work` may await nothing but the transaction itself.
   * @throws {DOMException} as the browser gives it; nothing of the transaction is kept then.
   */
  async write(
    stores: Stores,
    work: (transaction: WriteTransaction) => Promise<void>,
    durability: 'strict' | 'relaxed' = 'strict',
  ): Promise<void> {
    await this.#withConnection(async (connection) => {
      const transaction = begin(connection, stores, durability);
      try {
        await work(transaction);
      } catch (error) {
        // Where the transaction failed by itself, its own error says why; `work` only saw that it was gone.
        transaction.done.catch(() => undefined);
        try {
          transaction.abort();
        } catch {
          await transaction.done;
        }
        throw error;
      }
      await transaction.done;
    });
  }

  async close(): Promise<void> {
    const connection = this.#connection;
    this.#connection = undefined;
    (await connection)?.close();
  }

  async #withConnection<Result>(work: (connection: Connection) => Promise<Result>): Promise<Result> {
    const connection = await this.#open();
    this.#torn ??= leaveTornLog(connection);
    try {
      return await work(connection);
    } catch (error) {
      if (isSevered(error)) this.#connection = undefined;
      throw error;
    }
  }

  #open(): Promise<Connection> {
    this.#connection ??= openDB<RecordSchema>(this.#name, VERSION, {
      upgrade: (database, before) => {
        if (before < 1) {
          database.createObjectStore('streams', { keyPath: 'key' });
          database.createObjectStore('events', { keyPath: ['key', 'seq'] });
          database.createObjectStore('scratch');
        }
        if (before < 2) database.createObjectStore('sounds', { keyPath: 'sha256' });
      },
      // A newer page wants to change the form: this one lets go and opens again when it next writes.
      blocking: () => void this.close(),
      terminated: () => {
        this.#connection = undefined;
      },
    }).catch((error) => {
      this.#connection = undefined;
      throw asOpeningError(error);
    });
    return this.#connection;
  }
}

function begin(connection: Connection, stores: Stores, durability: 'strict' | 'relaxed') {
  return connection.transaction(stores, 'readwrite', { durability });
}

/** More than Chromium's store holds back before it begins a new log (4 MB), in values it does not put into files. */
const SCRATCH_VALUES = 90;
const SCRATCH_LENGTH = 50_000;
/** With less room than this, what is written for a moment could take the room of an event. */
const ROOM_FOR_SCRATCH = 50_000_000;

/**
 * A crash in the middle of a write leaves half a record at the end of the log in which Chromium's store keeps its
 * latest writes. It goes on writing behind that half record (google/leveldb issue 1287), and at the next start takes
 * the log for damaged and throws the whole database away. Writing more than it holds back makes it begin a new log and
 * put everything before it in order. Measured in Chromium 143: 3 of 82 kills while writing lost all without this, none of 350 with it.
 */
async function leaveTornLog(connection: Connection): Promise<void> {
  try {
    const { quota = 0, usage = 0 } = await navigator.storage.estimate();
    if (quota - usage < ROOM_FOR_SCRATCH) return;
    const filling = begin(connection, ['scratch'], 'strict');
    const scratch = filling.objectStore('scratch');
    for (let at = 0; at < SCRATCH_VALUES; at += 1) void scratch.put('0'.repeat(SCRATCH_LENGTH), at);
    await filling.done;
    const clearing = begin(connection, ['scratch'], 'relaxed');
    void clearing.objectStore('scratch').clear();
    await clearing.done;
  } catch {
    // Without room, or with the connection gone, the record is no worse off than before.
  }
}

/** The connection is gone, whatever was asked of it; another one may work. */
export function isSevered(error: unknown): boolean {
  return error instanceof DOMException && ['InvalidStateError', 'UnknownError', 'AbortError'].includes(error.name);
}

function asOpeningError(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error;
  if (error.name === 'VersionError') return new RecordError('log-newer', 'in this browser', error);
  return new RecordError('log-unwritable', `this browser keeps no database: ${error.name}`, error);
}

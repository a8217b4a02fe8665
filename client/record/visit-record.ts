import type { Entry, StreamId } from '../../grammar/visit/envelope.ts';
import type { Acknowledged, TakenOver } from '../../grammar/visit/messages.ts';
import { openBody, sealBody, type TextCipher } from '../../grammar/visit/personal.ts';
import type { Follows } from '../../grammar/visit/record-lines.ts';
import { fetchStream } from './fetch-stream.ts';
import { inTurn } from './in-turn.ts';
import type { LinkOptions } from './link.ts';
import { beginNextEpoch, carryOver, readEpochs } from './next-epoch.ts';
import { Outbox, type OutboxState } from './outbox.ts';
import type { VisitLog } from './visit-log.ts';

/** Where a device keeps the logs of its streams: files in a folder, the browser's database. */
export interface LogStore {
  /** Opens the stream's log, or begins it. */
  open(stream: StreamId, follows?: Follows): Promise<VisitLog>;
  /** The newest epoch this device holds of the stream's visit and device; undefined where it holds none. */
  newestEpoch(stream: StreamId): Promise<number | undefined>;
}

export interface VisitRecordOptions {
  /** The first epoch of this device's stream; later ones are found or begun as needed. */
  readonly stream: StreamId;
  readonly store: LogStore;
  readonly link: LinkOptions;
  /** Seals what is personal in a body before it is written, and opens it for reading; nothing is sealed without. */
  readonly cipher?: TextCipher;
  /** The device's wall clock in milliseconds since 1970. */
  readonly clock?: () => number;
}

/** Stops after which the visit goes on in a new epoch: the server's copy is not, or no longer, a beginning of ours. */
const EPOCH_ENDS: ReadonlySet<string> = new Set(['server-ahead', 'fork', 'stream-sealed']);

/**
 * A visit's record on this device, over all its epochs: to the visit it is one list of events that grows. Where the
 * server holds other events of the stream than this device (a restored backup, a copied record), a new epoch is begun
 * by itself; both copies are kept, and the server shows the older one as sealed.
 */
export class VisitRecord {
  readonly #options: VisitRecordOptions;
  readonly #logs: VisitLog[];
  readonly #listeners = new Set<(state: OutboxState) => void>();
  readonly #hearers = new Set<(message: Acknowledged | TakenOver) => void>();
  readonly #run = inTurn();
  #outbox: Outbox;
  #goingOn = false;
  #stopped = false;

  /** Use `openVisitRecord`. */
  constructor(options: VisitRecordOptions, logs: VisitLog[]) {
    this.#options = options;
    this.#logs = logs;
    this.#outbox = this.#connect();
  }

  /** Every event of the visit on this device, in order, opened: the hashes are of the bodies as they were sealed. */
  read(): Promise<readonly Entry[]> {
    return this.#run(async () => openEntries(await readEpochs(this.#logs), this.#options.cipher));
  }

  /** Writes the events (see VisitLog.append), then sends them as the network allows. */
  append(bodies: readonly string[]): Promise<readonly Entry[]> {
    const { cipher } = this.#options;
    return this.#run(async () => {
      const sealed = cipher === undefined ? bodies : await Promise.all(bodies.map((body) => sealBody(body, cipher)));
      return this.#outbox.append(sealed);
    });
  }

  /** As of an outbox, counted over all epochs. */
  state(): OutboxState {
    const state = this.#outbox.state();
    const older = this.#logs.reduce((sum, log) => sum + (log.follows?.keeps ?? 0), 0);
    return {
      ...state,
      ...(this.#goingOn ? { link: { link: 'connecting' } as const } : {}),
      written: older + state.written,
      acknowledged: older + state.acknowledged,
    };
  }

  subscribe(listener: (state: OutboxState) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Calls back when a supervisor's word comes from their own device, or another one carries the visit on; returns what ends that. */
  onTold(hear: (message: Acknowledged | TakenOver) => void): () => void {
    this.#hearers.add(hear);
    return () => this.#hearers.delete(hear);
  }

  /** Resolves when the server holds everything written so far; rejects with the sentence when the link stops. */
  settled(): Promise<void> {
    const { written } = this.state();
    return new Promise((resolve, reject) => {
      const look = ({ link, acknowledged }: OutboxState) => {
        if (acknowledged < written && link.link !== 'stopped') return;
        unsubscribe();
        if (acknowledged >= written) resolve();
        else if (link.link === 'stopped') reject(new Error(link.sentence));
      };
      const unsubscribe = this.subscribe(look);
      look(this.state());
    });
  }

  retryNow(): void {
    this.#outbox.retryNow();
  }

  /** Ends the connection and closes the logs; what is written is sent when the record is opened again. */
  async close(): Promise<void> {
    this.#stopped = true;
    this.#outbox.stop();
    await this.#run(async () => {
      for (const log of this.#logs) await log.close();
    });
  }

  #connect(): Outbox {
    const { link, clock } = this.#options;
    const log = this.#logs.at(-1) as VisitLog;
    const told = (message: Acknowledged | TakenOver) => {
      if (message.kind === 'taken-over' && message.device === log.stream.device) return;
      for (const hear of this.#hearers) hear(message);
    };
    const outbox = new Outbox({ ...link, log, told, ...(clock === undefined ? {} : { clock }) });
    outbox.subscribe(({ link: state }) => {
      if (state.link === 'stopped' && EPOCH_ENDS.has(state.code) && !this.#stopped) void this.#goOn(log);
      else this.#tell();
    });
    // Not before this record is whole: the link tells its first state at once.
    void Promise.resolve().then(() => {
      if (!this.#stopped) outbox.start();
    });
    return outbox;
  }

  /** Asks the server outside of any turn, since writing must not wait for it, and changes over within one. */
  async #goOn(ended: VisitLog): Promise<void> {
    if (this.#goingOn) return;
    this.#goingOn = true;
    this.#tell();
    try {
      const held = await fetchStream(this.#options.link, ended.stream);
      await this.#run(async () => {
        if (this.#stopped || held.length === 0) return;
        const { store } = this.#options;
        this.#logs.push(await beginNextEpoch(ended, held, (stream, follows) => store.open(stream, follows)));
        this.#outbox = this.#connect();
      });
    } catch {
      // The outbox stays stopped, and its sentence says what is to be done.
    } finally {
      this.#goingOn = false;
      this.#tell();
    }
  }

  #tell(): void {
    const state = this.state();
    for (const listener of this.#listeners) listener(state);
  }
}

/** The entries with their personal texts readable, as far as the cipher opens them. */
export function openEntries<E extends Pick<Entry, 'body'>>(
  entries: readonly E[],
  cipher: TextCipher | undefined,
): Promise<readonly E[]> {
  return Promise.all(entries.map(async (entry) => ({ ...entry, body: await openBody(entry.body, cipher) })));
}

/** Opens a visit's record with all its epochs, and begins to send what the server does not have yet. */
export async function openVisitRecord(options: VisitRecordOptions): Promise<VisitRecord> {
  const { stream, store } = options;
  const newest = (await store.newestEpoch(stream)) ?? stream.epoch;
  const logs: VisitLog[] = [];
  for (let epoch = stream.epoch; epoch <= newest; epoch += 1) {
    const log = await store.open({ ...stream, epoch });
    const older = logs.at(-1);
    if (older !== undefined) await carryOver(older, log);
    logs.push(log);
  }
  return new VisitRecord(options, logs);
}

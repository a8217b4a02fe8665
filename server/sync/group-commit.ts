import { ServerError } from '../errors.ts';
import { reportFault } from '../report-fault.ts';
import type { CommitOutcome, EventStore, ReceivedEvent } from '../store/event-store.ts';
import { TakeTurns } from './take-turns.ts';

/** Who handed an event in, and is told what became of it: once a batch, in order. */
export interface Submitter {
  /** All connections of one device take one turn. */
  readonly device: string;
  committed(events: readonly ReceivedEvent[], outcomes: readonly CommitOutcome[]): Promise<void>;
  /** The batch could not be kept: none of it is acknowledged. */
  failed(error: unknown): void;
}

interface Submitted {
  readonly event: ReceivedEvent;
  readonly from: Submitter;
}

const LARGEST_BATCH = 1_024;
/**
 * Where several write, a batch waits so long for others: each costs a write to the disk and a signature. On a slow disk
 * it waits twice as long as the latest write took, so that the disk does not keep the event loop for itself.
 */
const GATHER_MS = { least: 5, most: 50 } as const;
const gatherMs = (wroteMs: number) => Math.min(GATHER_MS.most, Math.max(GATHER_MS.least, 2 * wroteMs));
/** So many are worth a write at once. */
const WORTH_A_WRITE = 64;

/** Gathers the events of all connections into batches, so that many share one write to the disk. */
export class GroupCommit {
  readonly #store: EventStore;
  readonly #kept: () => Promise<void>;
  readonly #stored: (events: readonly ReceivedEvent[]) => void;
  readonly #queue = new TakeTurns<Submitted>();
  #running: Promise<void> | undefined;
  /** Several wrote the latest batch. */
  #several = false;
  /** How long it took to write it, in milliseconds. */
  #wroteMs = 0;
  readonly #answering = new Set<Promise<unknown>>();

  /**
   * @param stored hears of newly kept events after their submitters did
   * @param kept is told of each batch that is on the disk, before anybody hears of it
   */
  constructor(store: EventStore, stored: (events: readonly ReceivedEvent[]) => void, kept: () => Promise<void>) {
    this.#store = store;
    this.#stored = stored;
    this.#kept = kept;
  }

  submit(event: ReceivedEvent, from: Submitter): void {
    this.#queue.add(from.device, { event, from });
    this.#running ??= this.#run();
  }

  /** How long the latest write to the disk took, in milliseconds. */
  get latestWriteMs(): number {
    return this.#wroteMs;
  }

  /** Resolves when nothing is queued any more, and all was answered. */
  async drained(): Promise<void> {
    while (this.#running !== undefined) await this.#running;
    await Promise.all(this.#answering);
  }

  async #run(): Promise<void> {
    while (this.#queue.size > 0) {
      await this.#gather();
      await this.#commit(this.#queue.take(LARGEST_BATCH));
      // One turn of the event loop takes in what has arrived meanwhile.
      await new Promise((resolve) => setImmediate(resolve));
    }
    this.#running = undefined;
  }

  async #gather(): Promise<void> {
    const wait = this.#several && this.#queue.size < WORTH_A_WRITE;
    await new Promise((resolve) => (wait ? setTimeout(resolve, gatherMs(this.#wroteMs)) : setImmediate(resolve)));
  }

  async #commit(batch: readonly Submitted[]): Promise<void> {
    const parts = partsOf(batch);
    this.#several = parts.size > 1;
    let outcomes: readonly CommitOutcome[];
    try {
      outcomes = await this.#keep(batch);
    } catch (error) {
      // What one of them sent must not fail the others. A full disk fails all.
      const isFull = error instanceof ServerError && error.code === 'data-full';
      if (parts.size > 1 && !isFull) {
        for (const part of parts.values()) await this.#commit(part.map((at) => batch[at] as Submitted));
        return;
      }
      reportFault(error);
      for (const submitter of parts.keys()) submitter.failed(error);
      return;
    }
    const told = [...parts].map(([submitter, part]) =>
      submitter.committed(
        part.map((at) => (batch[at] as Submitted).event),
        part.map((at) => outcomes[at] as CommitOutcome),
      ),
    );
    // The next batch is written meanwhile; each submitter answers in order.
    const answered: Promise<unknown> = Promise.all(told).then(() => this.#answering.delete(answered));
    this.#answering.add(answered);
    this.#stored(batch.map(({ event }) => event).filter((_, at) => outcomes[at]?.kind === 'stored'));
  }

  async #keep(batch: readonly Submitted[]): Promise<readonly CommitOutcome[]> {
    const began = performance.now();
    const outcomes = await this.#store.commit(batch.map(({ event }) => event));
    this.#wroteMs = performance.now() - began;
    await this.#kept();
    return outcomes;
  }
}

/** Where in the batch the events of each submitter stand. */
function partsOf(batch: readonly Submitted[]): ReadonlyMap<Submitter, readonly number[]> {
  const parts = new Map<Submitter, number[]>();
  for (const [at, { from }] of batch.entries()) {
    const part = parts.get(from);
    if (part === undefined) parts.set(from, [at]);
    else part.push(at);
  }
  return parts;
}

import { reportFault } from '../report-fault.ts';
import type { CommitOutcome, EventStore, ReceivedEvent } from '../store/event-store.ts';

/** Who handed an event in, and is told what became of it: once a batch, in order. */
export interface Submitter {
  committed(events: readonly ReceivedEvent[], outcomes: readonly CommitOutcome[]): void;
  /** The batch could not be kept: none of it is acknowledged. */
  failed(error: unknown): void;
}

const LARGEST_BATCH = 512;

/** Gathers the events of all connections into batches, so that many share one write to the disk. */
export class GroupCommit {
  readonly #store: EventStore;
  readonly #kept: () => Promise<void>;
  readonly #stored: (events: readonly ReceivedEvent[]) => void;
  #queue: { readonly event: ReceivedEvent; readonly from: Submitter }[] = [];
  #running: Promise<void> | undefined;

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
    this.#queue.push({ event, from });
    this.#running ??= this.#run();
  }

  /** Resolves when nothing is queued any more. */
  async drained(): Promise<void> {
    while (this.#running !== undefined) await this.#running;
  }

  async #run(): Promise<void> {
    // One turn of the event loop gathers what else has arrived.
    await new Promise((resolve) => setImmediate(resolve));
    while (this.#queue.length > 0) {
      await this.#commit(this.#queue.splice(0, LARGEST_BATCH));
      await new Promise((resolve) => setImmediate(resolve));
    }
    this.#running = undefined;
  }

  async #commit(batch: readonly { readonly event: ReceivedEvent; readonly from: Submitter }[]): Promise<void> {
    const submitters = new Map<Submitter, { events: ReceivedEvent[]; outcomes: CommitOutcome[] }>();
    for (const { from } of batch) submitters.set(from, { events: [], outcomes: [] });
    let outcomes: readonly CommitOutcome[];
    try {
      outcomes = await this.#store.commit(batch.map(({ event }) => event));
      await this.#kept();
    } catch (error) {
      reportFault(error);
      for (const submitter of submitters.keys()) submitter.failed(error);
      return;
    }
    for (const [at, outcome] of outcomes.entries()) {
      const { event, from } = batch[at] as (typeof batch)[number];
      const part = submitters.get(from);
      part?.events.push(event);
      part?.outcomes.push(outcome);
    }
    for (const [submitter, part] of submitters) submitter.committed(part.events, part.outcomes);
    this.#stored(batch.map(({ event }) => event).filter((_, at) => outcomes[at]?.kind === 'stored'));
  }
}

import type { ServerMessage, Watch } from '../../grammar/visit/messages.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore, StreamPosition } from '../store/event-store.ts';
import { closeReason } from './refusals.ts';
import type { VisitHub } from './visit-hub.ts';
import type { Connection } from './writer-session.ts';

const EVENTS_A_MESSAGE = 128;
/**
 * A watcher hears something at least this often, so that silence means a dead connection; what is new is read then too,
 * should a hint of another server have been lost.
 */
const HEARTBEAT_MS = 10_000;

/** One reader of one visit. It re-reads the store by stream and seq: a hint may be lost or doubled without harm. */
export class WatchSession {
  readonly #watch: Watch;
  readonly #connection: Connection & { drained(): Promise<void> };
  readonly #store: EventStore;
  readonly #positions = new Map<string, StreamPosition>();
  readonly #unsubscribe: () => void;
  readonly #heartbeat: NodeJS.Timeout;
  #reading = false;
  #again = false;
  #closed = false;

  constructor(watch: Watch, connection: Connection & { drained(): Promise<void> }, store: EventStore, hub: VisitHub) {
    this.#watch = watch;
    this.#connection = connection;
    this.#store = store;
    for (const position of watch.from) this.#positions.set(`${position.device}/${position.epoch}`, position);
    this.#unsubscribe = hub.watch(watch.company, watch.visit, () => this.#readOn());
    this.#heartbeat = setInterval(() => this.#readOn(), HEARTBEAT_MS);
    this.#readOn();
  }

  close(): void {
    this.#closed = true;
    this.#unsubscribe();
    clearInterval(this.#heartbeat);
  }

  #readOn(): void {
    this.#again = true;
    if (this.#reading) return;
    this.#reading = true;
    this.#sendWhatIsNew()
      .catch((error) => {
        reportFault(error);
        this.#connection.refuse(closeReason('server-failed'));
      })
      .finally(() => {
        this.#reading = false;
      });
  }

  async #sendWhatIsNew(): Promise<void> {
    while (this.#again && !this.#closed) {
      this.#again = false;
      const { company, visit } = this.#watch;
      const events = await this.#store.beyond(company, visit, [...this.#positions.values()], EVENTS_A_MESSAGE);
      for (const { device, epoch, seq } of events) this.#positions.set(`${device}/${epoch}`, { device, epoch, seq });
      const level = events.length < EVENTS_A_MESSAGE;
      this.#send({ kind: 'events', events: events.map(({ arrival: _arrival, ...event }) => event), level });
      if (!level) this.#again = true;
      await this.#connection.drained();
    }
  }

  #send(message: ServerMessage): void {
    if (!this.#closed) this.#connection.send(message);
  }
}

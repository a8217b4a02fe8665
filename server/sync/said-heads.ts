import { type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore, SaidHead } from '../store/event-store.ts';

/** So long a device has to send what it said that it has: most do, and then nothing need be kept of its word. */
const WAIT_MS = 250;

/** Gathers where devices say that their streams end, and keeps what is beyond what then is held. */
export class SaidHeads {
  readonly #store: Pick<EventStore, 'note'>;
  readonly #said = new Map<string, SaidHead>();
  #timer: NodeJS.Timeout | undefined;

  constructor(store: Pick<EventStore, 'note'>) {
    this.#store = store;
  }

  /** A stream that is not begun has nothing to be missing. */
  said(stream: StreamId, head: SaidHead['head'], saidAt: number): void {
    if (head.seq === 0) return;
    this.#said.set(streamText(stream), { stream, head, saidAt });
    this.#timer ??= setTimeout(() => this.keep(), WAIT_MS);
  }

  /** Keeps what was said so far. A word that cannot be kept is said again at the next hello. */
  async keep(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const said = [...this.#said.values()];
    this.#said.clear();
    if (said.length > 0) await this.#store.note(said).catch(reportFault);
  }
}

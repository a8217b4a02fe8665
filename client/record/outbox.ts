import type { Entry, Hash, Head } from '../../grammar/visit/envelope.ts';
import {
  type Ack,
  type Acknowledged,
  MAX_IN_FLIGHT,
  PROTOCOL,
  type ServerMessage,
  type TakenOver,
  type Welcome,
} from '../../grammar/visit/messages.ts';
import type { Acknowledgement } from '../../grammar/visit/record-lines.ts';
import { Link, type LinkOptions, type LinkState } from './link.ts';
import type { VisitLog } from './visit-log.ts';

export interface OutboxOptions extends LinkOptions {
  readonly log: VisitLog;
  /** The device's wall clock in milliseconds since 1970, told to the server as a claim. */
  readonly clock?: () => number;
  /** A supervisor's word came from their own device, or another device carries the visit on. */
  readonly told?: (message: Acknowledged | TakenOver) => void;
}

/** How far the record has come: written on this device, and held by the server. */
export interface OutboxState {
  readonly link: LinkState;
  /** Events written here. */
  readonly written: number;
  /** Events the server has on its disk. */
  readonly acknowledged: number;
  /** Set when the server holds more of this stream than this device does (a restored backup): a new epoch is due. */
  readonly ahead?: Head;
}

/**
 * Carries a log to the server: every event is durable here before it is sent, and is sent until it is acknowledged.
 * Writing never waits for the network.
 */
export class Outbox {
  readonly #log: VisitLog;
  readonly #clock: (() => number) | undefined;
  readonly #told: OutboxOptions['told'];
  readonly #link: Link;
  readonly #listeners = new Set<(state: OutboxState) => void>();
  /** Hashes of what was sent on this connection and is not acknowledged yet. */
  readonly #inFlight = new Map<number, Hash>();
  #welcomed = false;
  #nextToSend = 1;
  #serverHas = 0;
  #pumping = false;
  #connection = 0;
  #ahead: Head | undefined;

  constructor(options: OutboxOptions) {
    this.#log = options.log;
    this.#clock = options.clock;
    this.#told = options.told;
    this.#serverHas = options.log.acknowledged()?.seq ?? 0;
    this.#link = new Link(options, {
      opened: () => this.#hello(),
      received: (message) => this.#received(message),
      changed: (state) => {
        if (state.link !== 'open') this.#welcomed = false;
        this.#tell();
      },
    });
  }

  start(): this {
    this.#link.connect();
    return this;
  }

  /** Ends the connection; what is written stays written, and is sent by the next outbox of this log. */
  stop(): void {
    this.#link.stop('ended', 'The connection was ended here.');
  }

  retryNow(): void {
    this.#link.retryNow();
  }

  /** Writes the events (see VisitLog.append), then sends them as the network allows. */
  async append(bodies: readonly string[]): Promise<readonly Entry[]> {
    const entries = await this.#log.append(bodies);
    this.#tell();
    this.#pump();
    return entries;
  }

  state(): OutboxState {
    return {
      link: this.#link.state(),
      written: this.#log.head().seq,
      acknowledged: this.#serverHas,
      ...(this.#ahead === undefined ? {} : { ahead: this.#ahead }),
    };
  }

  subscribe(listener: (state: OutboxState) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Resolves when the server has said where its copy ends, which may be before what it once acknowledged (it lost its
   * record, or was set back to a backup); rejects with the sentence when the link stops.
   */
  welcomed(): Promise<void> {
    return new Promise((resolve, reject) => {
      const look = ({ link }: OutboxState) => {
        if (!this.#welcomed && link.link !== 'stopped') return;
        unsubscribe();
        if (this.#welcomed) resolve();
        else if (link.link === 'stopped') reject(new Error(link.sentence));
      };
      const unsubscribe = this.subscribe(look);
      look(this.state());
    });
  }

  /** Resolves when the server holds everything written so far; rejects with the sentence when the link stops. */
  settled(): Promise<void> {
    const written = this.#log.head().seq;
    return new Promise((resolve, reject) => {
      const look = (state: OutboxState) => {
        const stopped = state.link.link === 'stopped';
        if (state.acknowledged < written && !stopped) return;
        unsubscribe();
        if (state.acknowledged >= written) resolve();
        else if (state.link.link === 'stopped') reject(new Error(state.link.sentence));
      };
      const unsubscribe = this.subscribe(look);
      look(this.state());
    });
  }

  #hello(): void {
    const { stream, follows } = this.#log;
    const { seq, hash } = this.#log.head();
    this.#connection += 1;
    this.#inFlight.clear();
    this.#link.open({
      kind: 'hello',
      protocol: PROTOCOL,
      stream,
      head: { seq, hash },
      ...(this.#clock === undefined ? {} : { clock: this.#clock() }),
      ...(follows === undefined ? {} : { follows: { epoch: follows.epoch, head: follows.head } }),
    });
  }

  #received(message: ServerMessage): void {
    switch (message.kind) {
      case 'welcome':
        this.#welcome(message, this.#connection).catch((error) => this.#unreadable(error));
        return;
      case 'ack':
        this.#acknowledge(message);
        return;
      case 'gap':
        this.#resumeAt(message.need);
        return;
      case 'fork':
        this.#link.stop('fork', message.sentence);
        return;
      case 'acknowledged':
      case 'taken-over':
        this.#told?.(message);
        return;
      case 'error':
      case 'events':
        return;
      default:
        message satisfies never;
    }
  }

  /** Where the server's copy ends decides: carry on behind it, or stop where it is not the beginning of ours. */
  async #welcome({ head }: Welcome, connection: number): Promise<void> {
    if (head.seq > this.#log.head().seq) {
      this.#ahead = head;
      this.#link.stop(
        'server-ahead',
        `The server holds ${head.seq} events of this visit and this device only ${this.#log.head().seq}: go on in a new epoch.`,
      );
      return;
    }
    const [ours] = head.seq === 0 ? [head] : await this.#log.read(head.seq, 1);
    if (connection !== this.#connection) return;
    if (ours?.hash !== head.hash) {
      this.#link.stop(
        'fork',
        `Event ${head.seq} differs between this device and the server: both are kept; compare them.`,
      );
      return;
    }
    this.#welcomed = true;
    this.#serverHas = head.seq;
    if (head.seq > 0) this.#keep(head);
    this.#resumeAt(head.seq + 1);
    this.#tell();
  }

  #resumeAt(seq: number): void {
    this.#nextToSend = seq;
    this.#inFlight.clear();
    this.#pump();
  }

  #acknowledge(ack: Ack): void {
    if (ack.seq <= this.#serverHas) return;
    const sent = this.#inFlight.get(ack.seq);
    if (sent === undefined) return;
    if (sent !== ack.hash) {
      this.#link.stop(
        'fork',
        `The server acknowledged another event ${ack.seq} than this device sent: compare both records.`,
      );
      return;
    }
    for (const seq of this.#inFlight.keys()) if (seq <= ack.seq) this.#inFlight.delete(seq);
    this.#serverHas = ack.seq;
    if (this.#inFlight.size > 0) this.#link.expectAnswer();
    const { seq, hash, receipt } = ack;
    this.#keep({ seq, hash, ...(receipt === undefined ? {} : { receipt }) });
    this.#tell();
    this.#pump();
  }

  /** Kept so that a cut end is found later. Where it cannot be written, the next event will say so itself. */
  #keep(acknowledgement: Acknowledgement): void {
    this.#log.acknowledge(acknowledgement).catch(() => undefined);
  }

  #pump(): void {
    if (this.#pumping) return;
    this.#pumping = true;
    this.#sendWhatMayBeSent()
      .catch((error) => this.#unreadable(error))
      .finally(() => {
        this.#pumping = false;
        if (this.#maySend()) this.#pump();
      });
  }

  #maySend(): boolean {
    return this.#welcomed && this.#inFlight.size < MAX_IN_FLIGHT && this.#nextToSend <= this.#log.head().seq;
  }

  /** In order, and never more than MAX_IN_FLIGHT ahead of the acknowledgements. */
  async #sendWhatMayBeSent(): Promise<void> {
    while (this.#maySend()) {
      const from = this.#nextToSend;
      const connection = this.#connection;
      const entries = await this.#log.read(from, MAX_IN_FLIGHT - this.#inFlight.size);
      if (connection !== this.#connection || from !== this.#nextToSend) continue;
      if (entries.length === 0) throw new Error(`event ${from} is missing`);
      for (const entry of entries) {
        this.#inFlight.set(entry.seq, entry.hash);
        this.#nextToSend = entry.seq + 1;
        this.#link.send({ kind: 'append', seq: entry.seq, hash: entry.hash, body: entry.body });
      }
    }
  }

  #unreadable(error: unknown): void {
    this.#link.stop('log-unreadable', `The record on this device cannot be read (${error}): open it again.`);
  }

  #tell(): void {
    const state = this.state();
    for (const listener of this.#listeners) listener(state);
  }
}

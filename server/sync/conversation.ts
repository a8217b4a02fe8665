import { Compile } from 'typebox/compile';
import type { WebSocket } from 'ws';
import { ClientMessageSchema } from '../../grammar/visit/message-schemas.ts';
import {
  type ClientMessage,
  type Hello,
  PROTOCOL,
  type ServerMessage,
  type Watch,
} from '../../grammar/visit/messages.ts';
import type { Admitted, Gate } from '../people/gate.ts';
import type { Leases } from '../people/leases.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore } from '../store/event-store.ts';
import { type Holders, LIMITS } from './limits.ts';
import type { LiveVisits } from './live-visits.ts';
import { type CloseReason, closeReason } from './refusals.ts';
import type { SaidHeads } from './said-heads.ts';
import type { VisitHub } from './visit-hub.ts';
import { WatchSession } from './watch-session.ts';
import { type Connection, type WriterOptions, WriterSession } from './writer-session.ts';

export interface ConversationOptions extends WriterOptions {
  readonly store: EventStore;
  readonly hub: VisitHub;
  readonly saidHeads: SaidHeads;
  readonly live: LiveVisits;
  readonly leases: Pick<Leases, 'elsewhere'>;
  readonly gate: Pick<Gate, 'admit' | 'look'>;
  readonly helloWithinMs: number;
  /** Connections that said neither hello nor watch yet, the one that waits longest first. */
  readonly silent: Set<Conversation>;
  /** Who writes, by device, and who reads, by visit. */
  readonly writers: Holders;
  readonly watchers: Holders;
}

const clientMessage = Compile(ClientMessageSchema);
/** A reader that lets this much pile up is not sent more until it has caught up. */
const MOST_BUFFERED_BYTES = 1_000_000;
const BUFFER_LOOK_MS = 20;

/** One connection, from its first message (hello or watch) to its close. */
export class Conversation implements Connection {
  readonly #socket: WebSocket;
  readonly #options: ConversationOptions;
  readonly #helloTimer: NodeJS.Timeout;
  /** What the connection is for; 'opening' while the store looks up where the stream ends. */
  #session: 'new' | 'opening' | WriterSession | WatchSession = 'new';
  #admitted: { readonly as: Admitted; readonly kind: 'hello' | 'watch' } | undefined;
  #closed = false;
  /** Something came since `look` was last called. */
  #alive = true;
  #letGo: () => void = () => undefined;

  constructor(socket: WebSocket, options: ConversationOptions) {
    this.#socket = socket;
    this.#options = options;
    this.#helloTimer = setTimeout(() => this.refuse(closeReason('hello-late')), options.helloWithinMs);
    options.silent.add(this);
    socket.on('message', (data, binary) => this.#received(data.toString(), binary));
    socket.on('pong', () => {
      this.#alive = true;
    });
    // The close that follows says all there is to do (a frame too large: 1009; text that is not UTF-8: 1007).
    socket.on('error', () => undefined);
    socket.on('close', () => this.#end());
  }

  send(message: ServerMessage): void {
    if (!this.#closed && this.#socket.readyState === this.#socket.OPEN) this.#socket.send(JSON.stringify(message));
  }

  refuse({ closeCode, code, sentence }: CloseReason): void {
    if (this.#closed) return;
    this.send({ kind: 'error', code, sentence });
    this.#end();
    this.#socket.close(closeCode, code);
  }

  async drained(): Promise<void> {
    while (!this.#closed && this.#socket.bufferedAmount > MOST_BUFFERED_BYTES) {
      await new Promise((resolve) => setTimeout(resolve, BUFFER_LOOK_MS));
    }
  }

  /** Asks for a sign of life; cuts the connection where none came since the last time: its device is gone. */
  look(): void {
    if (!this.#alive) return this.#socket.terminate();
    this.#alive = false;
    this.#socket.ping();
  }

  /** Closes the connection where what let it in no longer holds. */
  async lookAgain(): Promise<void> {
    if (this.#closed || this.#admitted === undefined) return;
    const reason = await this.#options.gate.look(this.#admitted.as, this.#admitted.kind);
    if (reason !== undefined) this.refuse(reason);
  }

  /** Resolves when the connection is closed, cutting it where that takes too long. */
  async gone(withinMs: number): Promise<void> {
    if (this.#socket.readyState === this.#socket.CLOSED) return;
    await new Promise<void>((resolve) => {
      const timer = setTimeout(() => this.#socket.terminate(), withinMs);
      this.#socket.once('close', () => {
        clearTimeout(timer);
        resolve();
      });
    });
  }

  #received(text: string, binary: boolean): void {
    if (this.#closed) return;
    this.#alive = true;
    if (binary) return this.refuse(closeReason('message-binary'));
    let message: unknown;
    try {
      message = JSON.parse(text);
    } catch {
      return this.refuse(closeReason('not-json'));
    }
    if (!clientMessage.Check(message)) {
      const [error] = clientMessage.Errors(message);
      return this.refuse(
        closeReason('message-wrong', error === undefined ? '' : `${error.instancePath} ${error.message}`),
      );
    }
    this.#take(message);
  }

  #take(message: ClientMessage): void {
    if (message.kind === 'append') {
      if (this.#session instanceof WriterSession) return this.#session.append(message);
      return this.refuse(closeReason('out-of-turn'));
    }
    if (this.#session !== 'new') return this.refuse(closeReason('out-of-turn'));
    clearTimeout(this.#helloTimer);
    this.#options.silent.delete(this);
    if (message.protocol !== PROTOCOL) return this.refuse(closeReason('protocol-other', String(PROTOCOL)));
    this.#session = 'opening';
    this.#start(message).catch((error) => {
      reportFault(error);
      this.refuse(closeReason('server-failed'));
    });
  }

  async #start(message: Hello | Watch): Promise<void> {
    const outcome = await this.#options.gate.admit(message);
    if ('closeCode' in outcome) return this.refuse(outcome);
    if (this.#closed) return;
    this.#admitted = { as: outcome, kind: message.kind };
    if (message.kind === 'watch') this.#startWatch(message);
    else await this.#startWriting(message);
  }

  async #startWriting(hello: Hello): Promise<void> {
    const { company, visit, device } = hello.stream;
    const { writers } = this.#options;
    if (writers.count(`${company}/${device}`) >= LIMITS.writersOfDevice) {
      return this.refuse(closeReason('too-many-of-device', String(LIMITS.writersOfDevice)));
    }
    this.#letGo = writers.hold(`${company}/${device}`);
    const outcome = await this.#options.store.open(hello.stream, hello.follows);
    if (outcome.kind === 'sealed') return this.refuse(closeReason('stream-sealed'));
    if (outcome.kind === 'unlinked') return this.refuse(closeReason('link-wrong'));
    if (hello.head !== undefined) this.#options.saidHeads.said(hello.stream, hello.head, this.#options.clock());
    if (this.#closed) return;
    this.#session = new WriterSession(hello, this, this.#options);
    const [free, leave] = [this.#letGo, this.#options.live.join(company, visit, (message) => this.send(message))];
    this.#letGo = () => {
      free();
      leave();
    };
    this.send({ kind: 'welcome', protocol: PROTOCOL, head: outcome.head, clock: this.#options.clock() });
    const elsewhere = await this.#options.leases.elsewhere(company, visit, device);
    if (elsewhere !== undefined) this.send(elsewhere);
  }

  #startWatch(watch: Watch): void {
    const name = `${watch.company}/${watch.visit}`;
    const { watchers } = this.#options;
    if (watchers.count(name) >= LIMITS.watchersOfVisit || watchers.all >= LIMITS.watchers) {
      return this.refuse(closeReason('too-many-readers'));
    }
    this.#letGo = watchers.hold(name);
    this.#session = new WatchSession(watch, this, this.#options.store, this.#options.hub);
  }

  #end(): void {
    this.#closed = true;
    this.#letGo();
    this.#options.silent.delete(this);
    clearTimeout(this.#helloTimer);
    if (this.#session instanceof WatchSession) this.#session.close();
  }
}

import type { ClientMessage, Hello, ServerMessage, Watch } from '../../grammar/visit/messages.ts';
import { type Admission, type Admit, NotAdmitted, withAdmission } from './admission.ts';
import { readServerMessage } from './read-server-message.ts';

/** A connection as an edge opens it (browser or Node): it calls back, and can be told to send or to close. */
export type OpenSocket = (callbacks: SocketCallbacks) => { send(text: string): void; close(): void };

export interface SocketCallbacks {
  readonly opened: () => void;
  readonly received: (text: string) => void;
  /** Called once, also where the connection never opened. */
  readonly closed: (code: number) => void;
}

/** Timers as an edge provides them; the core reads no clock. */
interface Timers {
  set(milliseconds: number, elapsed: () => void): () => void;
}

export interface LinkOptions {
  readonly openSocket: OpenSocket;
  /** Asks for what lets a connection in, before each; nothing where none is needed. */
  readonly admit?: Admit;
  readonly timers: Timers;
  /** A number from 0 up to 1: spreads the reconnects of many devices. */
  readonly random: () => number;
}

/** The link with something that is done before each of its connections. */
export function admittedAfter(link: LinkOptions, before: () => Promise<void>): LinkOptions {
  const { admit } = link;
  return {
    ...link,
    admit: async () => {
      await before();
      return admit?.();
    },
  };
}

export type LinkState =
  | { readonly link: 'connecting' }
  | { readonly link: 'open' }
  /** The connection is gone; the next attempt comes by itself. */
  | { readonly link: 'waiting'; readonly milliseconds: number }
  /** Going on would not help: someone must act on the sentence. */
  | { readonly link: 'stopped'; readonly code: string; readonly sentence: string };

export interface LinkCallbacks {
  /** The connection is open: say hello. */
  readonly opened: () => void;
  readonly received: (message: ServerMessage) => void;
  readonly changed: (state: LinkState) => void;
}

const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 30_000;
/** How long an answer may take before the connection counts as dead: a phone in a lift is told nothing. */
const SILENCE_MS = 15_000;
/** Closes by which the server says that what we send is wrong: to send it again would not help. */
const REFUSALS: ReadonlySet<number> = new Set([1002, 1003, 1007, 1008, 1009]);

/** One connection to the server that is opened again, after growing waits, until it is stopped. */
export class Link {
  readonly #options: LinkOptions;
  readonly #callbacks: LinkCallbacks;
  #state: LinkState = { link: 'connecting' };
  #socket: { send(text: string): void; close(): void } | undefined;
  /** Counts connections: a callback of an older one is ignored. */
  #generation = 0;
  #failures = 0;
  #cancelWait: () => void = () => undefined;
  #cancelSilence: (() => void) | undefined;
  #refusal: { code: string; sentence: string } | undefined;
  #admission: Admission | undefined;

  constructor(options: LinkOptions, callbacks: LinkCallbacks) {
    this.#options = options;
    this.#callbacks = callbacks;
  }

  state(): LinkState {
    return this.#state;
  }

  connect(): void {
    if (this.#state.link === 'stopped') return;
    this.#cancelWait();
    this.#drop();
    const generation = this.#generation;
    const current = (callback: () => void) => () => {
      if (generation === this.#generation) callback();
    };
    this.#become({ link: 'connecting' });
    this.expectAnswer();
    const { admit } = this.#options;
    if (admit === undefined) return this.#openSocket(current);
    admit().then(
      (admission) =>
        current(() => {
          this.#admission = admission;
          this.#openSocket(current);
        })(),
      (error) => current(() => this.#notAdmitted(error))(),
    );
  }

  #openSocket(current: (callback: () => void) => () => void): void {
    try {
      this.#socket = this.#options.openSocket({
        opened: current(() => this.#opened()),
        received: (text) => current(() => this.#received(text))(),
        closed: (code) => current(() => this.#closed(code))(),
      });
    } catch {
      this.#closed(1006);
    }
  }

  /** Tries again at once where the link waits (the network came back, the page is shown again). */
  retryNow(): void {
    if (this.#state.link === 'waiting') this.connect();
  }

  send(message: ClientMessage): void {
    if (this.#state.link !== 'open') return;
    this.expectAnswer();
    this.#socket?.send(JSON.stringify(message));
  }

  /** Sends the first message of a connection, with what lets it in. */
  open(message: Hello | Watch): void {
    const admission = this.#admission;
    if (admission === undefined) return this.send(message);
    const generation = this.#generation;
    const current = (act: () => void) => {
      if (generation === this.#generation) act();
    };
    withAdmission(message, admission).then(
      (whole) => current(() => this.send(whole)),
      () => current(() => this.#closed(1006)),
    );
  }

  /** From now on an answer must come: silence counts as a dead connection. */
  expectAnswer(): void {
    this.#cancelSilence ??= this.#options.timers.set(SILENCE_MS, () => this.#closed(1006));
  }

  /** Nothing is owed any more: silence is in order. */
  expectNothing(): void {
    this.#cancelSilence?.();
    this.#cancelSilence = undefined;
  }

  stop(code: string, sentence: string): void {
    if (this.#state.link === 'stopped') return;
    this.#cancelWait();
    this.#drop();
    this.#become({ link: 'stopped', code, sentence });
  }

  #notAdmitted(error: unknown): void {
    if (error instanceof NotAdmitted) this.stop(error.code, error.message);
    else this.#closed(1006);
  }

  #opened(): void {
    this.#become({ link: 'open' });
    this.#callbacks.opened();
  }

  #received(text: string): void {
    const message = readServerMessage(text);
    if (message === undefined) {
      this.stop('server-unknown', 'The server answers in another way than this program knows: update both.');
      return;
    }
    this.expectNothing();
    if (message.kind === 'error') this.#refusal = message;
    else this.#failures = 0;
    this.#callbacks.received(message);
  }

  #closed(code: number): void {
    const refusal = this.#refusal;
    this.#drop();
    if (REFUSALS.has(code)) {
      const said = refusal ?? {
        code: 'refused',
        sentence: `The server refused the connection (${code}): what is written here is kept; ask who runs the server.`,
      };
      this.stop(said.code, said.sentence);
      return;
    }
    const longest = Math.min(FIRST_WAIT_MS * 2 ** this.#failures, LONGEST_WAIT_MS);
    this.#failures = Math.min(this.#failures + 1, 16);
    const milliseconds = Math.round(longest * (0.5 + this.#options.random() / 2));
    this.#cancelWait = this.#options.timers.set(milliseconds, () => this.connect());
    this.#become({ link: 'waiting', milliseconds });
  }

  /** Leaves the connection without waiting for its close: on a dead network that close may come minutes later. */
  #drop(): void {
    this.#generation += 1;
    this.expectNothing();
    this.#refusal = undefined;
    this.#admission = undefined;
    this.#socket?.close();
    this.#socket = undefined;
  }

  #become(state: LinkState): void {
    this.#state = state;
    this.#callbacks.changed(state);
  }
}

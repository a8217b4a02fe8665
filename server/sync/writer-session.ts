import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { Append, Hello, ServerMessage } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import type { CommitOutcome, ReceivedEvent } from '../store/event-store.ts';
import type { GroupCommit, Submitter } from './group-commit.ts';
import type { ReceiptSigner } from './receipt-signer.ts';
import { type CloseReason, closeReason } from './refusals.ts';

/** What a session does to its connection. */
export interface Connection {
  send(message: ServerMessage): void;
  /** Says why, then closes. Nothing is sent afterwards. */
  refuse(reason: CloseReason): void;
}

export interface WriterOptions {
  readonly commits: GroupCommit;
  readonly signer: ReceiptSigner;
  /** Milliseconds since 1970. */
  readonly clock: () => number;
}

/** More than this many unanswered events mean that the device does not wait for acknowledgements. */
const LONGEST_QUEUE = 256;

/** As far from 1970 as a date of ECMAScript can be (ECMA-262, time values): further off a clock is not told. */
const FURTHEST_MS = 8.64e15;
const withinDates = (ms: number) => Math.max(-FURTHEST_MS, Math.min(FURTHEST_MS, Math.round(ms)));

/** One device that writes one stream, from its welcome on. */
export class WriterSession implements Submitter {
  /** Whose events these are, for all its connections: each device has its turn in a batch. */
  readonly device: string;
  readonly #stream: StreamId;
  readonly #connection: Connection;
  readonly #commits: GroupCommit;
  readonly #clock: () => number;
  readonly #signer: ReceiptSigner;
  readonly #clockOffsetMs: number | undefined;
  #queued = 0;
  #answers: Promise<void> = Promise.resolve();
  /** The number last asked for: what was sent before the device heard of it is passed over in silence. */
  #needed: number | undefined;

  constructor(hello: Hello, connection: Connection, options: WriterOptions) {
    this.#stream = hello.stream;
    this.device = `${hello.stream.company}/${hello.stream.device}`;
    this.#connection = connection;
    this.#commits = options.commits;
    this.#clock = options.clock;
    this.#signer = options.signer;
    if (hello.clock !== undefined) this.#clockOffsetMs = withinDates(hello.clock - options.clock());
  }

  append({ seq, hash, body }: Append): void {
    this.#queued += 1;
    if (this.#queued > LONGEST_QUEUE) {
      this.#connection.refuse(closeReason('too-fast'));
      return;
    }
    const offset = this.#clockOffsetMs === undefined ? {} : { clockOffsetMs: this.#clockOffsetMs };
    this.#commits.submit({ stream: this.#stream, seq, hash, body, receivedAt: this.#clock(), ...offset }, this);
  }

  /** Answers in the order in which batches were written, whichever signature is ready first. */
  committed(events: readonly ReceivedEvent[], outcomes: readonly CommitOutcome[]): Promise<void> {
    this.#queued -= events.length;
    this.#answers = this.#answers.then(() => this.#answerAll(events, outcomes));
    return this.#answers;
  }

  async #answerAll(events: readonly ReceivedEvent[], outcomes: readonly CommitOutcome[]): Promise<void> {
    let durable: ReceivedEvent | undefined;
    for (const [at, event] of events.entries()) {
      const outcome = outcomes[at] as CommitOutcome;
      if (outcome.kind === 'stored' || outcome.kind === 'duplicate') {
        // A duplicate may come behind newer ones: what speaks for all before it is the newest.
        if (event.seq > (durable?.seq ?? 0)) durable = event;
        if (outcome.kind === 'stored') this.#needed = undefined;
        continue;
      }
      await this.#acknowledge(durable);
      durable = undefined;
      if (!this.#answer(event, outcome)) return;
    }
    await this.#acknowledge(durable);
  }

  failed(error: unknown): void {
    const full = error instanceof ServerError && error.code === 'data-full';
    this.#connection.refuse(closeReason(full ? 'data-full' : 'server-failed'));
  }

  /** Cumulative: one acknowledgement speaks for all before it. */
  async #acknowledge(event: ReceivedEvent | undefined): Promise<void> {
    if (event === undefined) return;
    const { stream, seq, hash } = event;
    const receipt = await this.#signer.sign({ stream, seq, hash, time: this.#clock() });
    this.#connection.send({ kind: 'ack', seq, hash, receipt });
  }

  /** Answers what was not kept; false when the connection is at its end. */
  #answer(event: ReceivedEvent, outcome: Exclude<CommitOutcome, { kind: 'stored' | 'duplicate' }>): boolean {
    switch (outcome.kind) {
      case 'gap':
        if (this.#needed !== outcome.need) this.#connection.send({ kind: 'gap', need: outcome.need });
        this.#needed = outcome.need;
        return true;
      case 'fork': {
        const sentence = `Another event ${event.seq} of this stream is already held: both are kept; compare this device's record with the server's.`;
        this.#connection.send({ kind: 'fork', seq: event.seq, held: outcome.held, sentence });
        this.#connection.refuse({ ...closeReason('fork'), sentence });
        return false;
      }
      case 'broken':
        this.#connection.refuse(closeReason('chain-broken', String(event.seq)));
        return false;
      case 'sealed':
        this.#connection.refuse(closeReason('stream-sealed'));
        return false;
    }
  }
}

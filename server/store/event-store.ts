import type { Entry, Hash, Head, StreamId } from '../../grammar/visit/envelope.ts';

/** An event as it came from a device, with the server's time of receipt in milliseconds since 1970. */
export interface ReceivedEvent extends Entry {
  readonly stream: StreamId;
  readonly receivedAt: number;
  /** The device's clock minus the server's when the connection began, where the device told: a claim. */
  readonly clockOffsetMs?: number;
}

/** What became of one received event. */
export type CommitOutcome =
  | { readonly kind: 'stored' }
  /** Already held, byte for byte. */
  | { readonly kind: 'duplicate' }
  /** Another event stands at this number; this one is kept beside it and the stream is flagged. */
  | { readonly kind: 'fork'; readonly held: Hash }
  /** It came too early. */
  | { readonly kind: 'gap'; readonly need: number }
  /** Its hash does not follow from the event before it and its own body. */
  | { readonly kind: 'broken' }
  /** The stream was ended for good by a later epoch. */
  | { readonly kind: 'sealed' };

export type OpenOutcome =
  | { readonly kind: 'open'; readonly head: Head }
  | { readonly kind: 'sealed' }
  /** The stream that is to be followed does not end where it was said to. */
  | { readonly kind: 'unlinked' };

export interface VisitSummary {
  readonly visit: string;
  readonly streams: number;
  readonly events: number;
  /** Milliseconds since 1970, by the server's clock. */
  readonly firstReceivedAt: number;
  readonly lastReceivedAt: number;
  /** Events that contradict one already held. */
  readonly forks: number;
  /** How many events the devices said that they have, where that is more than are held. */
  readonly said?: number;
}

export interface StreamSummary {
  readonly device: string;
  readonly epoch: number;
  readonly head: Head;
  readonly firstReceivedAt: number;
  readonly lastReceivedAt: number;
  readonly forks: number;
  readonly sealed: boolean;
  /** Of the latest event, where its device told: how far the device's clock is ahead of the server's. */
  readonly clockOffsetMs?: number;
  /** The server's own clock went back while it took this stream: times of receipt do not order its events. */
  readonly receivedBackwards: boolean;
  /** How many events the device said that it has, where that is more than are held. */
  readonly said?: number;
  readonly follows?: { readonly epoch: number; readonly head: Head };
}

/** Where a device said that its stream ends, and when: milliseconds since 1970, by the server's clock. */
export interface SaidHead {
  readonly stream: StreamId;
  readonly head: Head;
  readonly saidAt: number;
}

/** The end of one stream, and how many events contradict one of its own. */
export interface StreamEnd {
  readonly stream: StreamId;
  readonly head: Head;
  readonly forks: number;
  readonly follows?: { readonly epoch: number; readonly head: Head };
}

export interface StoredEvent extends Entry {
  readonly device: string;
  readonly epoch: number;
  readonly receivedAt: number;
  /** The order in which the server took events; grows, with holes. */
  readonly arrival: number;
}

export type PartEvent = Entry & Pick<StoredEvent, 'receivedAt' | 'arrival'>;

export interface StreamPosition {
  readonly device: string;
  readonly epoch: number;
  readonly seq: number;
}

/**
 * Where events are kept. It knows envelopes and no visit: bodies go in and come out byte for byte. Every method that
 * reads takes the company, and answers for that company alone. One contract suite runs on every implementation.
 */
export interface EventStore {
  /** Where the stream ends; where `follows` is given, seals the stream it names and links the new one to it. */
  open(stream: StreamId, follows?: { readonly epoch: number; readonly head: Head }): Promise<OpenOutcome>;
  /**
   * Judges and keeps a batch, in order, in one transaction that is on the disk when the promise resolves.
   * @throws {ServerError} data-full, server-failed: then nothing of the batch is kept.
   */
  commit(batch: readonly ReceivedEvent[]): Promise<readonly CommitOutcome[]>;
  /**
   * Keeps where devices said that their streams end, as far as that is beyond what is held or was said before.
   * @throws {ServerError} data-full, server-failed: then none is kept.
   */
  note(said: readonly SaidHead[]): Promise<void>;
  /** Newest activity first. A visit of which only a device's word is held is among them. */
  visits(company: string, page: { readonly limit: number; readonly offset: number }): Promise<readonly VisitSummary[]>;
  /** The visit's streams by device and epoch; empty for an unknown visit. */
  streams(company: string, visit: string): Promise<readonly StreamSummary[]>;
  /** By arrival: in order of seq within a stream, of receipt across streams. */
  events(
    company: string,
    visit: string,
    page: { readonly after: number; readonly limit: number },
  ): Promise<readonly StoredEvent[]>;
  /** What lies beyond the positions, by stream and seq; a stream that is not named counts from its first event. */
  beyond(
    company: string,
    visit: string,
    positions: readonly StreamPosition[],
    limit: number,
  ): Promise<readonly StoredEvent[]>;
  /** One stream's events by seq, beyond `after`: what a check of a long visit reads piece by piece. */
  part(stream: StreamId, page: { readonly after: number; readonly limit: number }): Promise<readonly PartEvent[]>;
  /** Where every stream of every company ends: for the server's own heads, never for an answer. */
  ends(): Promise<readonly StreamEnd[]>;
  /** The hash at a number of a stream; undefined where nothing stands there. */
  hashAt(stream: StreamId, seq: number): Promise<Hash | undefined>;
  /** The last number of a stream; 0 where it is not held. */
  lastSeq(stream: StreamId): Promise<number>;
  /** When the first `upTo` events of a stream came, in milliseconds since 1970, by their numbers. */
  receivedTimes(stream: StreamId, upTo: number): Promise<readonly number[]>;
  /** The number of the latest event by arrival; 0 in an empty store. */
  lastArrival(): Promise<number>;
  /** When the latest event came, by the clock of that time; undefined in an empty store. */
  lastReceivedAt(): Promise<number | undefined>;
  close(): Promise<void>;
}

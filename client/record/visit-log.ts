import { chainBodies, type Entry, type Head, type Sha256, type StreamId } from '../../grammar/visit/envelope.ts';
import { type Append, MAX_FRAME_BYTES } from '../../grammar/visit/messages.ts';
import type { Acknowledgement, Follows } from '../../grammar/visit/record-lines.ts';
import { utf8Length } from '../../grammar/visit/utf8.ts';
import { RecordError } from './errors.ts';

/**
 * What this device wrote down of one visit: a stream of events that only grows. One contract suite runs on every
 * implementation (memory, file, IndexedDB).
 */
export interface VisitLog {
  readonly stream: StreamId;
  /** Set where this epoch carries on from an older stream: its last link at the server. */
  readonly follows?: Follows;
  /** The last link written; seq 0 while the log is empty. */
  head(): Head;
  /** The last acknowledgement kept, if any: with it a cut end or a chain written anew is found. */
  acknowledged(): Acknowledgement | undefined;
  /**
   * Writes one event for each body, all of them or none; durable when the promise resolves.
   * @throws {RecordError} body-too-large, log-closed, log-unwritable; nothing is written then.
   * @throws {RangeError} when a body has no UTF-8 form (a lone surrogate).
   */
  append(bodies: readonly string[]): Promise<readonly Entry[]>;
  /** Up to `limit` events from `from` on, in order. */
  read(from: number, limit?: number): Promise<readonly Entry[]>;
  /** Keeps what the server acknowledged. An older acknowledgement than the kept one is ignored. */
  acknowledge(acknowledgement: Acknowledgement): Promise<void>;
  close(): Promise<void>;
}

/**
 * The entries to write for `bodies`, checked to fit a frame. Hashing comes before any write: a browser's transaction
 * would close while the hash is awaited.
 */
export async function prepareEntries(head: Head, bodies: readonly string[], sha256: Sha256): Promise<readonly Entry[]> {
  const entries = await chainBodies(head, bodies, sha256);
  for (const entry of entries) {
    const bytes = utf8Length(JSON.stringify({ kind: 'append', ...entry } satisfies Append));
    if (bytes > MAX_FRAME_BYTES) throw new RecordError('body-too-large', `${bytes} of ${MAX_FRAME_BYTES} bytes`);
  }
  return entries;
}

/** The acknowledgement to keep of the one kept and the one that came. */
export function laterAcknowledgement(kept: Acknowledgement | undefined, came: Acknowledgement): Acknowledgement {
  return kept !== undefined && kept.seq >= came.seq ? kept : came;
}

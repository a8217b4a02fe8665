import type { Entry, Hash, Head, StreamId } from './envelope.ts';
import type { Receipt } from './messages.ts';

export interface Follows {
  readonly epoch: number;
  readonly head: Head;
  /** How many events of the older stream on this device still count: later ones were carried over into this epoch. */
  readonly keeps: number;
}

/** Up to where a server said that it holds a stream. */
export interface Acknowledgement {
  readonly seq: number;
  readonly hash: Hash;
  readonly receipt?: Receipt;
}

/** A line of the record file of a device, in JSON. */
export type RecordLine =
  | { readonly kind: 'stream'; readonly version: 1; readonly stream: StreamId; readonly follows?: Follows }
  | { readonly kind: 'batch'; readonly entries: readonly Entry[] }
  | ({ readonly kind: 'acknowledged' } & Acknowledgement);

/** What a line of a record file says; undefined where it is none. */
export function parseRecordLine(text: string): RecordLine | undefined {
  let line: Partial<Record<string, unknown>> | null;
  try {
    line = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof line !== 'object' || line === null) return undefined;
  const whole =
    (line['kind'] === 'stream' && typeof line['stream'] === 'object' && line['stream'] !== null) ||
    (line['kind'] === 'batch' && Array.isArray(line['entries']) && line['entries'].every(isEntry)) ||
    (line['kind'] === 'acknowledged' && typeof line['seq'] === 'number' && typeof line['hash'] === 'string');
  return whole ? (line as unknown as RecordLine) : undefined;
}

function isEntry(entry: unknown): entry is Entry {
  if (typeof entry !== 'object' || entry === null) return false;
  const { seq, hash, body } = entry as Partial<Entry>;
  return typeof seq === 'number' && typeof hash === 'string' && typeof body === 'string';
}

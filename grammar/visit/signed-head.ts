import type { Hash, Head } from './envelope.ts';

/** Where one stream stood when a head was taken. */
export interface KeptStream {
  /** `company/visit/device/epoch`. */
  readonly stream: string;
  readonly seq: number;
  readonly hash: Hash;
  /** SHA-256 over the times of receipt of its events, in milliseconds, one a line. */
  readonly received: Hash;
  /** How many events contradict one of its own. */
  readonly forks: number;
  /** The older stream that it carries on, as `epoch seq hash`; empty where it is a first one. */
  readonly follows: string;
}

/**
 * What the server signs once a day, and when it ends: where every stream stood. Each names the one before it; only
 * streams that moved since then are listed, except in one that begins anew.
 */
export interface SignedHead {
  /** 1, 2, 3 … */
  readonly number: number;
  /** The server's wall clock, in milliseconds since 1970. */
  readonly time: number;
  /** SHA-256 of the text of the head before; 64 zeros in the first. */
  readonly previous: Hash;
  /** Lists all streams and forgets those before: the first, and one that was taken after a loss was accepted. */
  readonly anew: boolean;
  readonly streams: readonly KeptStream[];
  /** Which key signed: the SHA-256 of its raw public key. */
  readonly key: Hash;
  /** Ed25519 over `headText`: 64 bytes in base64url. */
  readonly signature: string;
}

export const NO_HEAD_BEFORE: Hash = '0'.repeat(64);

/** What is signed, as text: one line a field and a stream, so that any tool can write it. */
export function headText(head: Omit<SignedHead, 'key' | 'signature'>): string {
  const { number, time, previous, anew, streams } = head;
  const lines = streams.map(
    ({ stream, seq, hash, received, forks, follows }) =>
      `${stream} ${seq} ${hash} ${received} ${forks}${follows === '' ? '' : ` ${follows}`}`,
  );
  return `readback head 1\n${number}\n${time}\n${previous}\n${anew ? 'anew' : 'on'}\n${lines.join('\n')}\n`;
}

/** How a head writes what a stream carries on. */
export function followsText(follows: { readonly epoch: number; readonly head: Head } | undefined): string {
  return follows === undefined ? '' : `${follows.epoch} ${follows.head.seq} ${follows.head.hash}`;
}

/** Where each stream stood by the latest head that names it, by its text. */
export function standBy(heads: readonly SignedHead[]): ReadonlyMap<string, KeptStream> {
  const stood = new Map<string, KeptStream>();
  for (const { anew, streams } of heads) {
    if (anew) stood.clear();
    for (const one of streams) stood.set(one.stream, one);
  }
  return stood;
}

import { createHash, hash } from 'node:crypto';
import {
  type Entry,
  type Hash,
  type Head,
  linkBytes,
  type StreamId,
  startBytes,
} from '../../grammar/visit/envelope.ts';
import { MAX_FRAME_BYTES } from '../../grammar/visit/messages.ts';
import type { CommitOutcome } from './event-store.ts';

/** The head of a stream that holds nothing yet. */
export function startHead(stream: StreamId): Head {
  return { seq: 0, hash: createHash('sha256').update(startBytes(stream)).digest('hex') };
}

/**
 * What is to become of an event that meets a stream ending at `head`. `held` looks up the hash of an event the stream
 * has. Every store judges by this one rule.
 */
export function judgeEvent(head: Head, event: Entry, held: (seq: number) => Hash | undefined): CommitOutcome {
  if (event.seq <= head.seq) {
    const other = held(event.seq) ?? '';
    return other === event.hash ? { kind: 'duplicate' } : { kind: 'fork', held: other };
  }
  if (event.seq > head.seq + 1) return { kind: 'gap', need: head.seq + 1 };
  return follows(head, event) ? { kind: 'stored' } : { kind: 'broken' };
}

/** A link of an event that fits a frame is written here, one after the other: of a new one each the memory costs more. */
const LINK = Buffer.alloc(41 + 3 * MAX_FRAME_BYTES);
const LINK_TAG = 0x01;
const TWO_TO_32 = 2 ** 32;
const LONE_SURROGATE = /\p{Surrogate}/u;

/** As `linkBytes` of the grammar writes it, by what Node can do faster; the bytes are good until the next call. */
function link(seq: number, previous: Hash, body: string): Uint8Array {
  if (body.length > MAX_FRAME_BYTES) return linkBytes(seq, previous, body);
  LINK[0] = LINK_TAG;
  LINK.writeUInt32BE(Math.floor(seq / TWO_TO_32), 1);
  LINK.writeUInt32BE(seq % TWO_TO_32, 5);
  LINK.write(previous, 9, 'hex');
  const length = LINK.write(body, 41, 'utf8');
  // More bytes than characters: not ASCII. What has no bytes would be written as its replacement.
  if (length !== body.length && LONE_SURROGATE.test(body)) throw new RangeError('a lone surrogate has no bytes');
  return LINK.subarray(0, 41 + length);
}

function follows(head: Head, event: Entry): boolean {
  try {
    return hash('sha256', link(event.seq, head.hash, event.body), 'hex') === event.hash;
  } catch (error) {
    // A body with a lone surrogate has no bytes to hash.
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** A store that ends before the link has yet to be caught up; one that ends elsewhere, or later, speaks against it. */
export function contradicts(held: Head, linked: Head): boolean {
  return held.seq > linked.seq || (held.seq === linked.seq && held.hash !== linked.hash);
}

import { createHash, hash } from 'node:crypto';
import {
  type Entry,
  type Hash,
  type Head,
  linkBytes,
  type StreamId,
  startBytes,
} from '../../grammar/visit/envelope.ts';
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

function follows(head: Head, event: Entry): boolean {
  try {
    const link = linkBytes(event.seq, head.hash, event.body);
    return hash('sha256', link, 'hex') === event.hash;
  } catch (error) {
    // A body with a lone surrogate has no bytes to hash.
    if (error instanceof RangeError) return false;
    throw error;
  }
}

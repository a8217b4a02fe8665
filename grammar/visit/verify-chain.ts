import { chainBodies, type Entry, emptyHead, type Head, type Sha256, type StreamId } from './envelope.ts';

/** What a check of a stream found. `seq` names the first event that does not hold. */
export type ChainVerdict =
  | { readonly intact: true; readonly head: Head }
  | {
      readonly intact: false;
      readonly seq: number;
      /** missing: a number is skipped or out of order; altered: body, hash or an earlier event was changed;
       *  short: the chain ends before the head that was kept; replaced: it holds, but is not the one that was kept. */
      readonly reason: 'missing' | 'altered' | 'short' | 'replaced';
      readonly sentence: string;
    };

/**
 * Checks a stream from its first event on. A chain alone shows neither a cut end nor a chain written anew: give the
 * head that was kept apart (a server's receipt, a phone's own head) to see those too.
 */
export async function verifyChain(
  stream: StreamId,
  entries: readonly Entry[],
  sha256: Sha256,
  kept?: Head,
): Promise<ChainVerdict> {
  let head = await emptyHead(stream, sha256);
  for (const entry of entries) {
    const seq = head.seq + 1;
    if (entry.seq !== seq) {
      return broken(seq, 'missing', `Event ${seq} is missing: event ${entry.seq} stands in its place.`);
    }
    const link = await linkOrNothing(head, entry.body, sha256);
    if (link?.hash !== entry.hash) {
      return broken(seq, 'altered', `Event ${seq} is not as it was written: its hash does not match.`);
    }
    if (kept?.seq === seq && kept.hash !== entry.hash) {
      return broken(seq, 'replaced', `Event ${seq} holds in itself, but is not the one that was acknowledged.`);
    }
    head = { seq, hash: entry.hash };
  }
  if (kept !== undefined && kept.seq > head.seq) {
    return broken(
      head.seq + 1,
      'short',
      `The record ends at event ${head.seq}, but event ${kept.seq} was acknowledged.`,
    );
  }
  return { intact: true, head };
}

/** A body that cannot be hashed at all (a lone surrogate) was not written by us: it counts as altered. */
async function linkOrNothing(head: Head, body: string, sha256: Sha256): Promise<Entry | undefined> {
  try {
    return (await chainBodies(head, [body], sha256))[0];
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function broken(seq: number, reason: 'missing' | 'altered' | 'short' | 'replaced', sentence: string): ChainVerdict {
  return { intact: false, seq, reason, sentence };
}

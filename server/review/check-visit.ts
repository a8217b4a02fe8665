import { type Sha256, type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { followsText, type SignedHead, standBy } from '../../grammar/visit/signed-head.ts';
import { type Verification, verifyRecord } from '../heads/verify-record.ts';
import { type HeldStream, sha256 } from '../heads/verify-stream.ts';
import type { EventStore, PartEvent } from '../store/event-store.ts';

/** Between so many events others are served: a check of a long visit holds up nobody. */
const EVENTS_A_TURN = 100;

/**
 * Reads a visit anew from the disk and checks every stream: its chain, and what the server signed of it.
 *
 * @param heads all that the server signed; what they say of other visits is left out
 */
export async function checkVisit(
  store: EventStore,
  company: string,
  visit: string,
  heads: readonly SignedHead[],
): Promise<Verification> {
  const streams = await store.streams(company, visit);
  const held: HeldStream[] = [];
  for (const { device, epoch, forks, follows, said } of streams) {
    const stream = { company, visit, device, epoch };
    const events = await readStream(store, stream);
    held.push({ stream: streamText(stream), events, forks, follows: followsText(follows), said });
  }
  return verifyRecord(held, { heads: ofVisit(heads, `${company}/${visit}/`) }, inTurns(sha256));
}

async function readStream(store: EventStore, stream: StreamId): Promise<HeldStream['events']> {
  const events: PartEvent[] = [];
  for (let after = 0; ; ) {
    const part = await store.part(stream, { after, limit: EVENTS_A_TURN });
    events.push(...part);
    const last = part.at(-1);
    if (last === undefined || part.length < EVENTS_A_TURN) return events;
    after = last.seq;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

/** Hashes, and gives the event loop its turn now and then. */
function inTurns(hash: (bytes: Uint8Array) => Uint8Array): Sha256 {
  let count = 0;
  return (bytes) => {
    count += 1;
    const hashed = hash(bytes);
    if (count % EVENTS_A_TURN !== 0) return hashed;
    return new Promise((resolve) => setImmediate(() => resolve(hashed)));
  };
}

/** The heads, as far as they speak of one visit. */
function ofVisit(heads: readonly SignedHead[], prefix: string): readonly SignedHead[] {
  const latest = heads.at(-1);
  const streams = [...standBy(heads).values()].filter(({ stream }) => stream.startsWith(prefix));
  return latest === undefined || streams.length === 0 ? [] : [{ ...latest, anew: true, streams }];
}

import { type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { followsText, type SignedHead, standBy } from '../../grammar/visit/signed-head.ts';
import { type Verification, verifyRecord } from '../heads/verify-record.ts';
import type { HeldStream } from '../heads/verify-stream.ts';
import type { EventStore, StreamSummary } from '../store/event-store.ts';

const EVENTS_A_PAGE = 5_000;

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
  const events = new Map<string, HeldStream['events'][number][]>();
  const nameOf = (device: string, epoch: number) => streamText({ company, visit, device, epoch } satisfies StreamId);
  for (let after = 0; ; ) {
    const page = await store.events(company, visit, { after, limit: EVENTS_A_PAGE });
    for (const { device, epoch, ...event } of page) {
      const name = nameOf(device, epoch);
      events.set(name, [...(events.get(name) ?? []), event]);
    }
    const last = page.at(-1);
    if (last === undefined || page.length < EVENTS_A_PAGE) break;
    after = last.arrival;
  }
  const streams = await store.streams(company, visit);
  const held = streams.map(({ device, epoch, forks, follows }) => {
    const stream = nameOf(device, epoch);
    return { stream, events: events.get(stream) ?? [], forks, follows: followsText(follows) };
  });
  const verified = await verifyRecord(held, { heads: ofVisit(heads, `${company}/${visit}/`) });
  return { ...verified, notes: [...verified.notes, ...streams.flatMap(incompleteWords)] };
}

function incompleteWords({ device, head, said }: StreamSummary): readonly string[] {
  return said === undefined ? [] : [`Not complete: ${head.seq} held, the device said ${said} (${device}).`];
}

/** The heads, as far as they speak of one visit. */
function ofVisit(heads: readonly SignedHead[], prefix: string): readonly SignedHead[] {
  const latest = heads.at(-1);
  const streams = [...standBy(heads).values()].filter(({ stream }) => stream.startsWith(prefix));
  return latest === undefined || streams.length === 0 ? [] : [{ ...latest, anew: true, streams }];
}

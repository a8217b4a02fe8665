import { createHash } from 'node:crypto';
import type { Entry } from '../../grammar/visit/envelope.ts';
import { type ChainVerdict, verifyChain } from '../../grammar/visit/verify-chain.ts';
import type { EventStore } from '../store/event-store.ts';

export type CheckedStream = { readonly device: string; readonly epoch: number } & ChainVerdict;

const EVENTS_A_PAGE = 5_000;

/**
 * Reads a visit anew from the disk and checks every stream's chain: bits that changed, events that are missing. A
 * record that was written anew as a whole is found by the devices' receipts, not here.
 */
export async function checkVisit(store: EventStore, company: string, visit: string): Promise<readonly CheckedStream[]> {
  const entries = new Map<string, Entry[]>();
  let after = 0;
  for (;;) {
    const page = await store.events(company, visit, { after, limit: EVENTS_A_PAGE });
    for (const event of page) {
      const key = `${event.device}/${event.epoch}`;
      const stream = entries.get(key) ?? [];
      stream.push(event);
      entries.set(key, stream);
    }
    const last = page.at(-1);
    if (last === undefined || page.length < EVENTS_A_PAGE) break;
    after = last.arrival;
  }
  const streams = await store.streams(company, visit);
  return Promise.all(
    streams.map(async ({ device, epoch }) => {
      const held = entries.get(`${device}/${epoch}`) ?? [];
      return { device, epoch, ...(await verifyChain({ company, visit, device, epoch }, held, sha256)) };
    }),
  );
}

function sha256(bytes: Uint8Array): Uint8Array {
  return createHash('sha256').update(bytes).digest();
}

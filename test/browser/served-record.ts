import { createHash } from 'node:crypto';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { type FoldedVisit, foldVisit } from '../../grammar/visit/fold-visit.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';

import { openBodies } from '../../server/personal/open-sealed.ts';

interface HeldEvent {
  readonly device: string;
  readonly epoch: number;
  readonly seq: number;
  readonly hash: string;
  readonly body: string;
}

export interface ServedRecord {
  readonly events: readonly HeldEvent[];
  readonly folded: FoldedVisit;
  /** Undefined where the chain holds from its first event on. */
  readonly flaw: string | undefined;
}

/** A visit as it stands in the server's store, read over HTTP, opened by its keys, with its chain checked here. */
export async function servedRecord(server: string, visit: string): Promise<ServedRecord> {
  const { events } = (await (await fetch(`${server}/api/visits/${visit}/events`)).json()) as { events: HeldEvent[] };
  const [first] = events;
  if (first === undefined) throw new Error(`the server holds nothing of ${visit}`);
  const stream = { company: 'local', visit, device: first.device, epoch: first.epoch };
  const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest();
  const { keys } = (await (await fetch(`${server}/api/visits/${visit}/keys`)).json()) as {
    keys: readonly { device: string; key?: string }[];
  };
  const of = keys.map(({ device, key }) => ({
    ...{ company: 'local', visit, device, createdAt: 0, erasedAt: undefined },
    key: key === undefined ? undefined : Buffer.from(key, 'base64url'),
  }));
  const opened = await openBodies(events, of);
  const verdict = await verifyChain(stream, events, sha256);
  return {
    events,
    folded: foldVisit(opened.map((body) => JSON.parse(body) as VisitEvent)),
    flaw: verdict.intact ? undefined : verdict.sentence,
  };
}

/** The visits that the server holds. */
export async function servedVisits(server: string): Promise<readonly string[]> {
  const { visits } = (await (await fetch(`${server}/api/visits`)).json()) as { visits: { visit: string }[] };
  return visits.map(({ visit }) => visit);
}

/** The only visit that the server holds. */
export async function onlyVisit(server: string): Promise<string> {
  const [visit, ...more] = await servedVisits(server);
  if (visit === undefined || more.length > 0) throw new Error(`the server holds ${more.length + 1} visits or none`);
  return visit;
}

/** Every reading that stands, in words that compare: where, value, unit. */
export function standingReadings(folded: FoldedVisit): readonly string[] {
  return folded.readings
    .filter((line) => !line.withdrawn)
    .map(({ reading }) => `${reading.at.join('–')} ${reading.value} ${reading.unit}`);
}

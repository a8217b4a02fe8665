import { followsText, type SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import type { StreamSummary } from '../store/event-store.ts';
import type { HeldStream } from './verify-stream.ts';

const VISITS_A_PAGE = 1000;

/** What a running server gives out: its whole record, its heads and its public key. */
export interface HeldByServer {
  readonly streams: readonly HeldStream[];
  readonly heads: readonly SignedHead[];
  readonly publicKey: string;
}

interface VisitsAnswer {
  readonly visits: readonly { readonly visit: string }[];
}
interface StreamsAnswer {
  readonly streams: readonly Pick<StreamSummary, 'device' | 'epoch' | 'forks' | 'follows' | 'said'>[];
}
interface EventsAnswer {
  readonly events: readonly (HeldStream['events'][number] & { readonly device: string; readonly epoch: number })[];
  readonly next?: number;
}

/** @throws {ServerError} tool-wrong, where nothing answers as a Readback server does. */
export async function heldByServer(url: string): Promise<HeldByServer> {
  const ask = <Answer>(path: string) => askServer<Answer>(url, path);
  const { receiptKey } = await ask<{ readonly receiptKey: string }>('/api/health');
  const { heads } = await ask<{ readonly heads: readonly SignedHead[] }>('/api/heads');
  const streams: HeldStream[] = [];
  for (let offset = 0; ; offset += VISITS_A_PAGE) {
    const { visits } = await ask<VisitsAnswer>(`/api/visits?limit=${VISITS_A_PAGE}&offset=${offset}`);
    for (const { visit } of visits) streams.push(...(await visitOf(ask, visit)));
    if (visits.length < VISITS_A_PAGE) return { streams, heads, publicKey: receiptKey };
  }
}

async function visitOf(ask: <Answer>(path: string) => Promise<Answer>, visit: string): Promise<readonly HeldStream[]> {
  const { streams } = await ask<StreamsAnswer>(`/api/visits/${visit}`);
  const events: EventsAnswer['events'][number][] = [];
  for (let after: number | undefined = 0; after !== undefined; ) {
    const page: EventsAnswer = await ask<EventsAnswer>(`/api/visits/${visit}/events?after=${after}`);
    events.push(...page.events);
    after = page.next;
  }
  return streams.map(({ device, epoch, forks, follows, said }) => ({
    // Whoever is asked over the network speaks for one company, the one of this machine.
    stream: `local/${visit}/${device}/${epoch}`,
    events: events.filter((event) => event.device === device && event.epoch === epoch),
    forks,
    follows: followsText(follows),
    said,
  }));
}

async function askServer<Answer>(url: string, path: string): Promise<Answer> {
  try {
    const response = await fetch(new URL(path, url));
    if (response.ok) return (await response.json()) as Answer;
    throw new Error(`${response.status}`);
  } catch (error) {
    throw new ServerError('tool-wrong', `No Readback server answers at ${url}: check the address.`, error);
  }
}

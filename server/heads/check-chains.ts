import { type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';
import type { EventStore, PartEvent, StreamEnd } from '../store/event-store.ts';
import { type Finding, sha256 } from './verify-stream.ts';

const EVENTS_A_PART = 1000;

/** What is read of a store. `withHoles`: streams that hold fewer events than the number of their last. */
type CheckedStore = EventStore & { readonly withHoles: () => readonly StreamId[] | Promise<readonly StreamId[]> };

/** How far the chains of a record were read, and what was found. */
export interface CheckedChains {
  readonly checked: number;
  /** How many there should be, by the last number of each stream. */
  readonly events: number;
  readonly findings: readonly Finding[];
}

/**
 * Reads streams from the disk and holds each against its own chain, for as long as a start may take: what was deleted,
 * changed or exchanged in the middle shows in no count. Which stream comes first is left to chance, so that in a long
 * record each is read at some start; streams whose count shows a hole are read first, and always.
 *
 * @param budgetMs the stream at which this is over is the last one that is read
 */
export async function checkChains(store: CheckedStore, budgetMs: number): Promise<CheckedChains> {
  const ends = await store.ends();
  const withHoles = new Set((await store.withHoles()).map(streamText));
  const hasHole = ({ stream }: StreamEnd) => withHoles.has(streamText(stream));
  const first = Math.floor(Math.random() * ends.length);
  const until = performance.now() + budgetMs;
  const findings: Finding[] = [];
  let checked = 0;
  const whole = [...ends.slice(first), ...ends.slice(0, first)].filter((end) => !hasHole(end));
  for (const end of [...ends.filter(hasHole), ...whole]) {
    if (performance.now() > until && !hasHole(end)) break;
    const verdict = await verifyChain(end.stream, await eventsOf(store, end), sha256);
    if (!verdict.intact) {
      findings.push({ stream: streamText(end.stream), seq: verdict.seq, sentence: verdict.sentence });
    }
    checked += end.head.seq;
  }
  return { checked, events: ends.reduce((sum, { head }) => sum + head.seq, 0), findings };
}

async function eventsOf(store: EventStore, { stream }: StreamEnd): Promise<readonly PartEvent[]> {
  const events: PartEvent[] = [];
  for (let after = 0; ; ) {
    const part = await store.part(stream, { after, limit: EVENTS_A_PART });
    events.push(...part);
    const last = part.at(-1);
    if (last === undefined || part.length < EVENTS_A_PART) return events;
    after = last.seq;
  }
}

import type { PersonalStore } from '../personal/personal-store.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore, StreamSummary } from '../store/event-store.ts';
import type { VisitBrief, VisitIndex } from '../store/visit-index.ts';
import { readVisit, type VisitSources } from './read-visit.ts';
import { summariseVisit } from './summarise-visit.ts';

/** A visit that still grows is summarised so long after it was last written to, and at the latest so long after it began. */
const QUIET_MS = 2_000;
const LATEST_MS = 20_000;
/** After each piece of work the same time so many times over is left to others. */
const REST = 4;
const LONGEST_REST_MS = 500;
/** Whoever asks for a list waits so long for what is due. */
const LEVEL_WITHIN_MS = 400;

/** What is read of the record. */
type IndexedRecord = Pick<EventStore, 'streams' | 'events' | 'ends'>;
/** What is read beside it. */
export interface IndexedBeside extends Pick<VisitSources, 'people' | 'signer'> {
  readonly keys: Pick<PersonalStore, 'keys' | 'erasures'>;
}
type VisitName = { readonly company: string; readonly visit: string };
interface Due extends VisitName {
  readonly since: number;
  touched: number;
}

/**
 * Keeps the index level with the record: it hears of what is written, makes briefs of it in its own time and a piece at
 * a time, and at the start looks for what it missed. What goes wrong with one visit is reported and holds up no other.
 */
export class IndexKeeper {
  readonly #store: IndexedRecord;
  readonly #index: VisitIndex;
  readonly #beside: IndexedBeside;
  readonly #due = new Map<string, Due>();
  #timer: NodeJS.Timeout | undefined;
  #work: Promise<void> | undefined;
  readonly #putting = new Set<Promise<void>>();
  #ended = false;
  #wake: () => void = () => undefined;

  constructor(store: IndexedRecord, index: VisitIndex, beside: IndexedBeside) {
    this.#beside = beside;
    this.#store = store;
    this.#index = index;
  }

  /** Visits that grew, or of which more was said. */
  touched(visits: Iterable<VisitName>): void {
    const now = performance.now();
    for (const { company, visit } of visits) {
      const key = `${company}/${visit}`;
      const due = this.#due.get(key);
      if (due === undefined) this.#due.set(key, { company, visit, since: now, touched: now });
      else due.touched = now;
    }
    this.#later(QUIET_MS);
  }

  /** What is personal of a visit was erased: its brief goes at once, and one without is made. */
  async forget(of: VisitName): Promise<void> {
    await Promise.all(this.#putting);
    await this.#index.forget(of.company, of.visit);
    this.touched([of]);
  }

  /** Finds what the index lacks or holds an older state of, by how many events each visit has. */
  async catchUp(): Promise<void> {
    const briefs = await this.#index.held();
    const named = new Set(briefs.filter(({ site }) => site !== '').map(({ company, visit }) => `${company}/${visit}`));
    // Erased while nobody could be told: a program that ended, another server that was not heard.
    for (const { company, visit } of await this.#beside.keys.erasures()) {
      if (named.delete(`${company}/${visit}`)) await this.#index.forget(company, visit);
    }
    const has = new Map((await this.#index.held()).map((row) => [`${row.company}/${row.visit}`, row.events]));
    const held = new Map<string, VisitName & { events: number }>();
    for (const { stream, head } of await this.#store.ends()) {
      const key = `${stream.company}/${stream.visit}`;
      const before = held.get(key)?.events ?? 0;
      held.set(key, { company: stream.company, visit: stream.visit, events: before + head.seq });
    }
    const lacking = [...held].filter(([key, { events }]) => has.get(key) !== events);
    for (const [key, { company, visit }] of lacking) this.#due.set(key, { company, visit, since: 0, touched: 0 });
    this.#later(0);
  }

  /** Summarises what is due of a company, the latest first, as far as that takes no longer than a reader would wait. */
  async level(company: string): Promise<void> {
    const until = performance.now() + LEVEL_WITHIN_MS;
    for (const due of [...this.#due.values()].reverse()) {
      if (performance.now() > until || this.#ended) break;
      if (due.company === company) await this.#summarise(due);
    }
    await Promise.all(this.#putting);
  }

  /** How many visits of a company are still to be summarised. */
  behind(company: string): number {
    return [...this.#due.values()].filter((due) => due.company === company).length;
  }

  async close(): Promise<void> {
    this.#ended = true;
    clearTimeout(this.#timer);
    this.#wake();
    await Promise.all([this.#work, ...this.#putting]);
    await this.#index.close();
  }

  #later(ms: number): void {
    if (this.#timer !== undefined || this.#work !== undefined || this.#ended || this.#due.size === 0) return;
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      this.#work = this.#someWork().finally(() => {
        this.#work = undefined;
        this.#later(QUIET_MS);
      });
    }, ms);
    this.#timer.unref();
  }

  async #someWork(): Promise<void> {
    const now = performance.now();
    const ripe = [...this.#due.values()].filter(
      ({ since, touched }) => now - touched >= QUIET_MS || now - since >= LATEST_MS || since === 0,
    );
    for (const due of ripe) {
      if (this.#ended) return;
      const began = performance.now();
      await this.#summarise(due);
      if (this.#ended) return;
      // Ended at once by `close`: a timer that keeps nothing alive would let the program end before its record is closed.
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
        setTimeout(resolve, Math.min(LONGEST_REST_MS, REST * (performance.now() - began))).unref();
      });
    }
  }

  async #summarise(due: Due): Promise<void> {
    const key = `${due.company}/${due.visit}`;
    if (this.#due.get(key) !== due) return;
    this.#due.delete(key);
    const put = this.#put(due).catch((error: unknown) => {
      if (!this.#ended) reportFault(error);
    });
    this.#putting.add(put);
    await put;
    this.#putting.delete(put);
  }

  async #put({ company, visit }: VisitName): Promise<void> {
    const streams = await this.#store.streams(company, visit);
    if (streams.length === 0) return;
    // Another server, or a tool, erased it and told only that the visit changed: its words do not stay in the file's log.
    if ((await this.#beside.keys.keys(company, visit)).some(({ erasedAt }) => erasedAt !== undefined))
      await this.#index.forget(company, visit);
    await this.#index.put(company, await this.#briefOf(company, visit, streams));
  }

  /** One that cannot be read is listed all the same, as a visit of nothing, and tried again at the next start. */
  async #briefOf(company: string, visit: string, streams: readonly StreamSummary[]): Promise<VisitBrief> {
    const held = { visit, device: streams[0]?.device ?? '', ...sumOf(streams) };
    const turn = () => new Promise((resolve) => setImmediate(resolve));
    try {
      const { stored, events } = await readVisit({ store: this.#store, ...this.#beside }, company, visit);
      return await summariseVisit({ ...held, device: stored[0]?.device ?? held.device }, events, turn);
    } catch (error) {
      if (!this.#ended) reportFault(error);
      return summariseVisit({ ...held, events: 0 }, []);
    }
  }
}

function sumOf(streams: readonly StreamSummary[]) {
  const events = streams.reduce((sum, { head }) => sum + head.seq, 0);
  const said = streams.reduce((sum, { head, said = head.seq }) => sum + said, 0);
  const lastReceivedAt = Math.max(...streams.map((stream) => stream.lastReceivedAt));
  return { events, lastReceivedAt, ...(said > events ? { said } : {}) };
}

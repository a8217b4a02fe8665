import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { joinDevices } from '../../../grammar/visit/join-devices.ts';
import type { Leases } from '../../../grammar/visit/leases.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { lastTimeOf, readBodies } from '../../../grammar/visit/read-bodies.ts';
import { askServer } from '../session/server-answer.ts';
import type { VisitTexts } from './open-visit-texts.ts';
import { VisitMoments } from './visit-moments.ts';

type ReadEntry = WatchedEvent & { readonly event: VisitEvent };

/** A visit as it comes, piece by piece: opened, joined over its devices and folded as far as it is here. */
export class VisitSoFar {
  readonly #visit: string;
  readonly #texts: VisitTexts;
  /** Who held the lease, as the server told last. */
  #leases: Promise<Leases | undefined>;
  readonly #come: WatchedEvent[] = [];
  #read: readonly ReadEntry[] = [];
  #moments = new VisitMoments([]);
  #others = 0;

  constructor(visit: string, texts: VisitTexts) {
    this.#visit = visit;
    this.#texts = texts;
    this.#leases = this.#askLeases();
  }

  /** All that has come, opened or not. */
  get come(): readonly WatchedEvent[] {
    return this.#come;
  }

  /** What counts, in its order, and what holds at each moment of it. Another object where anything has changed. */
  get moments(): VisitMoments {
    return this.#moments;
  }

  /** How many entries of devices that did not hold the lease do not count. */
  get others(): number {
    return this.#others;
  }

  take(fresh: readonly WatchedEvent[]): void {
    this.#come.push(...fresh);
  }

  /**
   * Goes through what has come since; or through all of it, where a key came behind the first events. One call at a time.
   * @returns whether a key may still come, so that it is worth going through all of it again
   */
  async goOn(anew: boolean): Promise<boolean> {
    const before = anew ? [] : this.#read;
    const fresh = this.#come.slice(before.length);
    const { bodies, waits } = await this.#texts.open(fresh);
    if (fresh.length === 0) return waits;
    const events = readBodies(bodies, lastTimeOf(before.at(-1)?.event));
    const read = fresh.map((entry, at) => ({
      ...entry,
      body: bodies[at] ?? entry.body,
      event: events[at] as VisitEvent,
    }));
    this.#read = [...before, ...read];
    // Of a take-over that has come since then the server tells whether it counts.
    if (before.length > 0 && read.some(({ event }) => isTakeOver(event))) this.#leases = this.#askLeases();
    const { entries, leftOut } = joinDevices(this.#read, await this.#leases);
    this.#others = leftOut.reduce((sum, { count }) => sum + count, 0);
    this.#moments = new VisitMoments(
      entries.map(({ event }) => event),
      this.#moments,
    );
    return waits;
  }
  async #askLeases(): Promise<Leases | undefined> {
    const answer = await askServer<Leases>('GET', `/api/visits/${encodeURIComponent(this.#visit)}/lease`);
    return answer.ok ? answer.body : undefined;
  }
}

const isTakeOver = (event: VisitEvent) => event.type === 'input.taken' && event.input?.type === 'took.over.visit';

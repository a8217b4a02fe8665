import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { noFacts, type VisitFacts } from '../../../grammar/visit/facts.ts';
import { factsAfter } from '../../../grammar/visit/facts-of.ts';
import { type FoldedVisit, type VisitFolding, visitFolding } from '../../../grammar/visit/fold-visit.ts';

/** What holds is kept after so many events each: to know it at a moment, fewer are gone over anew. */
const KEPT_EVERY = 64;

/** What a moment of a visit shows. */
export interface AtMoment {
  readonly facts: VisitFacts;
  readonly heard: FoldedVisit['heard'][number] | undefined;
  readonly said: FoldedVisit['said'][number] | undefined;
  readonly suspects: FoldedVisit['suspects'][number] | undefined;
  readonly energyChanges: FoldedVisit['energyChanges'];
  readonly rankings: FoldedVisit['suspects'];
}

/**
 * A visit that is gone through back and forth: folded once as a whole, and at each moment by the few events since the
 * last state that was kept. Facts are never changed, only followed by others, so that to keep them costs little.
 */
export class VisitMoments {
  readonly whole: FoldedVisit;
  readonly events: readonly VisitEvent[];
  readonly #kept: readonly VisitFacts[];
  /** Handed on to whoever goes on with it. */
  #folding: VisitFolding | undefined;

  /** @param before the same visit before the latest events came: what they only add to is not folded anew */
  constructor(events: readonly VisitEvent[], before?: VisitMoments) {
    this.events = events;
    const goesOn = before === undefined ? undefined : before.#handOn(events);
    const folding = goesOn ?? visitFolding();
    const kept = before === undefined || goesOn === undefined ? [noFacts()] : [...before.#kept];
    for (let at = goesOn === undefined ? 0 : (before?.events.length ?? 0); at < events.length; ) {
      const end = Math.min(events.length, at - (at % KEPT_EVERY) + KEPT_EVERY);
      folding.take(events.slice(at, end));
      if (end % KEPT_EVERY === 0) kept.push(folding.facts());
      at = end;
    }
    this.#kept = kept;
    this.#folding = folding;
    this.whole = folding.view();
  }

  /** The fold so far, where these events begin with all of its own. */
  #handOn(events: readonly VisitEvent[]): VisitFolding | undefined {
    if (!this.events.every((event, at) => event === events[at])) return undefined;
    const folding = this.#folding;
    this.#folding = undefined;
    return folding;
  }

  /** @param count how many events have happened then */
  at(count: number): AtMoment {
    const { heard, said, suspects, energyChanges } = this.whole;
    const rankings = upTo(suspects, count);
    return {
      facts: this.#factsAt(count),
      heard: upTo(heard, count).at(-1),
      said: upTo(said, count).at(-1),
      suspects: rankings.at(-1),
      rankings,
      energyChanges: upTo(energyChanges, count),
    };
  }

  #factsAt(count: number): VisitFacts {
    const from = Math.floor(Math.min(count, this.events.length) / KEPT_EVERY);
    let facts = this.#kept[from] ?? noFacts();
    for (let at = from * KEPT_EVERY; at < Math.min(count, this.events.length); at += 1) {
      facts = factsAfter(facts, this.events[at] as VisitEvent);
    }
    return facts;
  }
}

/** The lines that had happened by then; they stand in their order. */
export function upTo<Line extends { readonly seq: number }>(lines: readonly Line[], count: number): readonly Line[] {
  let low = 0;
  let high = lines.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle] as Line).seq <= count) low = middle + 1;
    else high = middle;
  }
  return low === lines.length ? lines : lines.slice(0, low);
}

import type { VisitEvent } from './events.ts';
import { evolve } from './evolve.ts';
import { noFacts, type VisitFacts } from './facts.ts';
import { isWhole } from './is-whole.ts';
import { inTodaysNames } from './older-events.ts';

/** What holds after these events, from the first on. What is damaged is counted, and says nothing. */
export function factsOf(events: readonly VisitEvent[]): VisitFacts {
  let facts = noFacts();
  for (const recorded of events) {
    const event = inTodaysNames(recorded);
    facts = isWhole(event) ? evolve(facts, event) : { ...facts, events: facts.events + 1 };
  }
  return facts;
}

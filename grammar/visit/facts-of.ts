import type { VisitEvent } from './events.ts';
import { evolve } from './evolve.ts';
import { noFacts, type VisitFacts } from './facts.ts';
import { isWhole } from './is-whole.ts';
import { inTodaysNames } from './older-events.ts';

/** What holds after these events, from the first on. What is damaged is counted, and says nothing. */
export function factsOf(events: readonly VisitEvent[]): VisitFacts {
  return events.reduce(factsAfter, noFacts());
}

/** What holds once one more event of a record has happened. */
export function factsAfter(facts: VisitFacts, recorded: VisitEvent): VisitFacts {
  const event = inTodaysNames(recorded);
  return isWhole(event) ? evolve(facts, event) : { ...facts, events: facts.events + 1 };
}

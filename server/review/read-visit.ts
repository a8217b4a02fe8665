import type { VisitEvent } from '../../grammar/visit/events.ts';
import { joinBodies } from '../../grammar/visit/join-devices.ts';
import { byKnownNames } from '../../grammar/visit/known-names.ts';
import { ServerError } from '../errors.ts';
import { givenLeases } from '../people/leases.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { openBodies } from '../personal/open-sealed.ts';
import type { PersonalStore } from '../personal/personal-store.ts';
import type { EventStore, StoredEvent } from '../store/event-store.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';

/** Between so many events others are served. */
const EVENTS_A_PAGE = 500;

/** What a visit is read from: the record, the keys that open it, and who held its lease. */
export interface VisitSources {
  readonly store: Pick<EventStore, 'events'>;
  readonly keys: Pick<PersonalStore, 'keys'>;
  readonly people: Pick<PeopleStore, 'leases' | 'olderLease'>;
  /** The server's own key: what it signed of a supervisor's word counts as theirs. */
  readonly signer: Pick<ReceiptSigner, 'verifies'>;
}

/** A visit as it is read here. */
export interface ReadVisit {
  /** As they are kept, by arrival. */
  readonly stored: readonly StoredEvent[];
  /** What counts of them, opened as far as the keys are there. */
  readonly events: readonly VisitEvent[];
}

/**
 * Reads a visit for whoever folds it; `joinBodies` says what counts of several devices.
 * @throws {ServerError} visit-unknown.
 */
export async function readVisit({ store, keys, people, signer }: VisitSources, company: string, visit: string) {
  const stored = await storedOf(store, company, visit);
  const bodies = await openBodies(stored, await keys.keys(company, visit));
  const opened = stored.map((entry, at) => ({ ...entry, body: bodies[at] ?? entry.body }));
  const { entries } = joinBodies(opened, await givenLeases(people, store, company, visit));
  const named = byKnownNames(entries, { company, visit }, ({ text, vouched }) =>
    signer.verifies(text, vouched.signature),
  );
  return { stored, events: named.map(({ event }) => event) } satisfies ReadVisit;
}

/**
 * All events of a visit by arrival, a page at a time.
 * @throws {ServerError} visit-unknown.
 */
export async function storedOf(
  store: Pick<EventStore, 'events'>,
  company: string,
  visit: string,
): Promise<readonly StoredEvent[]> {
  const all: StoredEvent[] = [];
  for (let after = 0; ; ) {
    const page = await store.events(company, visit, { after, limit: EVENTS_A_PAGE });
    all.push(...page);
    const last = page.at(-1);
    if (last === undefined || page.length < EVENTS_A_PAGE) break;
    after = last.arrival;
    await new Promise((resolve) => setImmediate(resolve));
  }
  if (all.length === 0) throw new ServerError('visit-unknown', visit);
  return all;
}

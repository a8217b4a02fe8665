import type { Leases as GivenLeases } from '../../grammar/visit/leases.ts';
import type { TakenOver } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import type { EventStore } from '../store/event-store.ts';
import type { LiveVisits } from '../sync/live-visits.ts';
import type { Peers } from '../sync/peers.ts';
import type { Caller, People } from './people.ts';
import type { Lease, PeopleStore } from './people-store.ts';

/** Another part of the visit counts from then on. */
type Index = { touched(visits: Iterable<{ readonly company: string; readonly visit: string }>): void };

/** Who holds the technician's lease of a visit, and how another device takes it over. */
export class Leases {
  readonly #people: People;
  readonly #store: Pick<EventStore, 'events' | 'streams'>;
  readonly #live: LiveVisits;
  readonly #peers: Pick<Peers, 'say'>;
  readonly #index: Index;

  constructor(
    people: People,
    store: Pick<EventStore, 'events' | 'streams'>,
    live: LiveVisits,
    peers: Pick<Peers, 'say'>,
    index: Index,
  ) {
    this.#peers = peers;
    this.#index = index;
    this.#people = people;
    this.#store = store;
    this.#live = live;
  }

  /**
   * Gives the lease to a device of the caller, where `from` still holds it, and tells the devices that write the visit.
   * A device that holds it already keeps it: whoever lost the answer asks again.
   *
   * @returns the number of the lease, by which the device's take-over goes; 0 for the device that opened the visit and
   * still holds it
   * @throws {ServerError} visit-unknown, device-unknown, lease-moved.
   */
  async takeOver(caller: Caller, visit: string, asked: { readonly device: string; readonly from: string }) {
    const { company, person } = caller;
    const { store, auditor, clock } = this.#people;
    await this.#own(caller, asked.device);
    const streams = await this.#store.streams(company, visit);
    const last = (await store.leases(company, visit)).at(-1);
    const holder = last?.device ?? (await openerOf(this.#store, company, visit));
    const number = last?.number ?? 0;
    if (holder === asked.device) return number;
    const behind = streams.map(({ device, epoch, head }) => ({ device, epoch, seq: head.seq }));
    const given: Lease = {
      company,
      visit,
      number: number + 1,
      device: asked.device,
      person,
      takenAt: clock(),
      behind,
    };
    if (holder !== asked.from || !(await store.giveLease(given))) throw new ServerError('lease-moved', visit);
    await auditor.done('visit taken over', { ...caller, device: asked.device }, `${visit} from ${asked.from}`);
    this.#index.touched([{ company, visit }]);
    const message = await this.#message(company, given);
    this.#live.say(company, visit, message);
    await this.#peers.say({ company, visit }, message);
    return given.number;
  }

  /** What a device that begins to write has to know: another one holds the lease. */
  async elsewhere(company: string, visit: string, device: string): Promise<TakenOver | undefined> {
    const lease = (await this.#people.store.leases(company, visit)).at(-1);
    return lease === undefined || lease.device === device ? undefined : this.#message(company, lease);
  }

  async #message(company: string, lease: { device: string; person: string; takenAt: number }): Promise<TakenOver> {
    const { device, person, takenAt: time } = lease;
    const name = person === '' ? '' : ((await this.#people.store.person(company, person))?.name ?? '');
    return { kind: 'taken-over', device, name, time };
  }

  /** The device is theirs, and was not revoked; where nobody signs in any will do. */
  async #own({ company, person }: Caller, name: string): Promise<void> {
    if (person === '') return;
    const device = await this.#people.store.device(name);
    const isOwn = device?.company === company && device.person === person && device.revokedAt === undefined;
    if (!isOwn) throw new ServerError('device-unknown', name);
  }
}

/**
 * Who held the lease of a visit, one after another: by this every reader tells what counts of several devices.
 * @throws {ServerError} visit-unknown.
 */
export async function givenLeases(
  people: Pick<PeopleStore, 'leases'>,
  store: Pick<EventStore, 'events'>,
  company: string,
  visit: string,
): Promise<GivenLeases> {
  const opener = await openerOf(store, company, visit);
  const steps = await people.leases(company, visit);
  return { opener, steps: steps.map(({ number, device, behind }) => ({ number, device, behind })) };
}

/** The device whose event came first opened the visit. */
async function openerOf(store: Pick<EventStore, 'events'>, company: string, visit: string): Promise<string> {
  const [first] = await store.events(company, visit, { after: 0, limit: 1 });
  if (first === undefined) throw new ServerError('visit-unknown', visit);
  return first.device;
}

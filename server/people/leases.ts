import type { TakenOver } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import type { EventStore } from '../store/event-store.ts';
import type { LiveVisits } from '../sync/live-visits.ts';
import type { Peers } from '../sync/peers.ts';
import type { Caller, People } from './people.ts';

/** Who holds the technician's lease of a visit, and how another device takes it over. */
export class Leases {
  readonly #people: People;
  readonly #store: Pick<EventStore, 'streams'>;
  readonly #live: LiveVisits;
  readonly #peers: Pick<Peers, 'say'>;

  constructor(people: People, store: Pick<EventStore, 'streams'>, live: LiveVisits, peers: Pick<Peers, 'say'>) {
    this.#peers = peers;
    this.#people = people;
    this.#store = store;
    this.#live = live;
  }

  /**
   * Gives the lease to a device of the caller, where `from` still holds it, and tells the devices that write the visit.
   * A device that holds it already keeps it: whoever lost the answer asks again.
   * @throws {ServerError} visit-unknown, device-unknown, lease-moved.
   */
  async takeOver(caller: Caller, visit: string, asked: { readonly device: string; readonly from: string }) {
    const { company, person } = caller;
    const { store, auditor, clock } = this.#people;
    await this.#own(caller, asked.device);
    const before = await store.lease(company, visit);
    const holder = before?.device ?? (await this.#opener(company, visit));
    if (holder === asked.device) return;
    const lease = { company, visit, device: asked.device, person, takenAt: clock() };
    if (holder !== asked.from || !(await store.takeLease(lease, before))) throw new ServerError('lease-moved', visit);
    await auditor.done('visit taken over', { ...caller, device: asked.device }, `${visit} from ${asked.from}`);
    const message = await this.#message(company, lease);
    this.#live.say(company, visit, message);
    await this.#peers.say({ company, visit }, message);
  }

  /**
   * The device that holds the lease.
   * @throws {ServerError} visit-unknown.
   */
  async holder(company: string, visit: string): Promise<string> {
    return (await this.#people.store.lease(company, visit))?.device ?? this.#opener(company, visit);
  }

  /** What a device that begins to write has to know: another one holds the lease. */
  async elsewhere(company: string, visit: string, device: string): Promise<TakenOver | undefined> {
    const lease = await this.#people.store.lease(company, visit);
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

  /** The device whose first event came first opened the visit. */
  async #opener(company: string, visit: string): Promise<string> {
    const [first] = (await this.#store.streams(company, visit)).toSorted(
      (a, b) => a.firstReceivedAt - b.firstReceivedAt || a.epoch - b.epoch,
    );
    if (first === undefined) throw new ServerError('visit-unknown', visit);
    return first.device;
  }
}

import Type from 'typebox';
import { Compile } from 'typebox/compile';
import { isServers } from '../../grammar/visit/known-names.ts';
import type { Leases as GivenLeases } from '../../grammar/visit/leases.ts';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import type { TakenOver } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import type { EventStore } from '../store/event-store.ts';
import type { LiveVisits } from '../sync/live-visits.ts';
import type { Peers } from '../sync/peers.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import type { Caller, People } from './people.ts';
import type { Lease, PeopleStore } from './people-store.ts';

/** What the server signs of the leases of a visit: the device keeps it, for a server whose record was put back. */
export interface LeaseGrant {
  readonly text: string;
  /** Ed25519, 64 bytes in base64url. */
  readonly signature: string;
}

/** The lease as a device was given it. */
export interface GivenLease {
  /** By which the device's take-over goes; 0 for the device that opened the visit and still holds it. */
  readonly lease: number;
  readonly grant: LeaseGrant;
}

export interface LeaseOptions {
  readonly people: People;
  readonly store: Pick<EventStore, 'events' | 'streams'>;
  readonly signer: Pick<ReceiptSigner, 'signText' | 'verifies'>;
  readonly live: LiveVisits;
  readonly peers: Pick<Peers, 'say'>;
  /** Another part of a visit counts from then on. */
  readonly touched: (visit: { readonly company: string; readonly visit: string }) => void;
}

const HEADING = 'readback leases 1\n';
const GrantSchema = Type.Object({
  company: NameSchema,
  visit: NameSchema,
  leases: Type.Array(
    Type.Object({
      number: Type.Integer({ minimum: 0 }),
      device: NameSchema,
      person: Type.String(),
      takenAt: Type.Integer(),
      behind: Type.Array(Type.Object({ device: NameSchema, epoch: Type.Integer(), seq: Type.Integer() })),
    }),
  ),
});
const grantOf = Compile(GrantSchema);

/** Who holds the technician's lease of a visit, and how another device takes it over. */
export class Leases {
  readonly #options: LeaseOptions;

  constructor(options: LeaseOptions) {
    this.#options = options;
  }

  /**
   * Gives the lease to a device of the caller, where `from` still holds it, and tells the devices that write the visit.
   * A device that holds it already keeps it: whoever lost the answer asks again.
   * @throws {ServerError} visit-unknown, device-unknown, lease-moved.
   */
  async takeOver(
    caller: Caller,
    visit: string,
    asked: { readonly device: string; readonly from: string },
  ): Promise<GivenLease> {
    const { company, person } = caller;
    const { people, store: record } = this.#options;
    const { store, auditor, clock } = people;
    await this.#own(caller, asked.device);
    const streams = await record.streams(company, visit);
    const before = inForce(await store.leases(company, visit));
    const opener = before[0]?.device ?? (await openerOf(record, company, visit));
    const holder = before.at(-1)?.device ?? (await store.olderLease(company, visit)) ?? opener;
    const number = before.at(-1)?.number ?? 0;
    if (holder === asked.device) return { lease: number, grant: this.#grant(company, visit, before) };
    if (holder !== asked.from) throw new ServerError('lease-moved', visit);
    const common = { company, visit, takenAt: clock() };
    const opening: Lease = { ...common, number: 0, device: opener, person: '', behind: [] };
    if (before.length === 0) await store.giveLease(opening);
    const behind = streams.map(({ device, epoch, head }) => ({ device, epoch, seq: head.seq }));
    const given: Lease = { ...common, number: number + 1, device: asked.device, person, behind };
    if (!(await store.giveLease(given))) throw new ServerError('lease-moved', visit);
    await auditor.done('visit taken over', { ...caller, device: asked.device }, `${visit} from ${asked.from}`);
    this.#options.touched({ company, visit });
    const message = await this.#message(company, given);
    this.#options.live.say(company, visit, message);
    await this.#options.peers.say({ company, visit }, message);
    return {
      lease: given.number,
      grant: this.#grant(company, visit, [...(before.length === 0 ? [opening] : before), given]),
    };
  }

  /**
   * Takes back what this server signed of the leases of a visit, where its record was put back to before they were given:
   * only then the devices that wrote by them may send what they hold. What it knows of them otherwise stays as it is.
   * @throws {ServerError} lease-wrong, where it did not sign this.
   */
  async takeBack(visit: string, { text, signature }: LeaseGrant): Promise<void> {
    const { people, signer, touched } = this.#options;
    const { store, auditor } = people;
    if (!text.startsWith(HEADING) || !signer.verifies(text, signature)) throw new ServerError('lease-wrong', visit);
    const grant: unknown = JSON.parse(text.slice(HEADING.length));
    if (!grantOf.Check(grant) || grant.visit !== visit) throw new ServerError('lease-wrong', visit);
    const { company, leases } = grant;
    const all = await store.leases(company, visit);
    const known = inForce(all);
    const isOther = known.some(
      ({ device, takenAt }, at) => leases[at]?.device !== device || leases[at]?.takenAt !== takenAt,
    );
    const lacking = leases.slice(known.length);
    // Given otherwise since then, that stays; whoever held it by this one may send what they wrote all the same.
    const aside = leases.filter(({ device }) => !all.some((one) => one.device === device));
    const added = isOther ? aside.map((lease, at) => ({ ...lease, number: -1 - all.length - at })) : lacking;
    if (added.length === 0) return;
    await auditor.done('leases taken back', { company }, `${visit} ${added.map(({ device }) => device).join(' ')}`);
    for (const lease of added) await store.giveLease({ company, visit, ...lease });
    touched({ company, visit });
  }

  /** What a device that begins to write has to know: another one holds the lease. */
  async elsewhere(company: string, visit: string, device: string): Promise<TakenOver | undefined> {
    const lease = inForce(await this.#options.people.store.leases(company, visit)).at(-1);
    return lease === undefined || lease.device === device ? undefined : this.#message(company, lease);
  }

  #grant(company: string, visit: string, leases: readonly Lease[]): LeaseGrant {
    const kept = leases.map(({ number, device, person, takenAt, behind }) => ({
      ...{ number, device, person, takenAt, behind },
    }));
    const text = `${HEADING}${JSON.stringify({ company, visit, leases: kept })}`;
    return { text, signature: this.#options.signer.signText(text).signature };
  }

  async #message(company: string, lease: { device: string; person: string; takenAt: number }): Promise<TakenOver> {
    const { device, person, takenAt: time } = lease;
    const name = person === '' ? '' : ((await this.#options.people.store.person(company, person))?.name ?? '');
    return { kind: 'taken-over', device, name, time };
  }

  /** The device is theirs, and was not revoked; where nobody signs in any will do but the server's own. */
  async #own({ company, person }: Caller, name: string): Promise<void> {
    if (isServers(name)) throw new ServerError('device-unknown', name);
    if (person === '') return;
    const device = await this.#options.people.store.device(name);
    const isOwn = device?.company === company && device.person === person && device.revokedAt === undefined;
    if (!isOwn) throw new ServerError('device-unknown', name);
  }
}

/**
 * Who held the lease of a visit, one after another: by this every reader tells what counts of several devices.
 * @throws {ServerError} visit-unknown.
 */
export async function givenLeases(
  people: Pick<PeopleStore, 'leases' | 'olderLease'>,
  store: Pick<EventStore, 'events'>,
  company: string,
  visit: string,
): Promise<GivenLeases> {
  const [first, ...steps] = inForce(await people.leases(company, visit));
  const older = await people.olderLease(company, visit);
  return {
    opener: first?.device ?? (await openerOf(store, company, visit)),
    steps: steps.map(({ number, device, behind }) => ({ number, device, behind })),
    ...(older === undefined ? {} : { older }),
  };
}

/** Without those that were set aside by a restore. */
const inForce = (leases: readonly Lease[]) => leases.filter(({ number }) => number >= 0);

/** The device whose event came first opened the visit. */
async function openerOf(store: Pick<EventStore, 'events'>, company: string, visit: string): Promise<string> {
  const [first] = await store.events(company, visit, { after: 0, limit: 1 });
  if (first === undefined) throw new ServerError('visit-unknown', visit);
  return first.device;
}

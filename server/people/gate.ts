import { openingText, requestText } from '../../grammar/visit/device-texts.ts';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import { isServers } from '../../grammar/visit/known-names.ts';
import type { Hello, Watch } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import type { EventStore } from '../store/event-store.ts';
import { type CloseReason, closeReason, type RefusalCode } from '../sync/refusals.ts';
import { signedBy } from './devices.ts';
import { mayReadVisit } from './may-read.ts';
import type { Caller, People } from './people.ts';
import type { Device } from './people-store.ts';
import { may } from './permissions.ts';
import { hashOf, newToken } from './secrets.ts';

/** A ticket lasts half a minute: from its request to the first message of the connection. */
const TICKET_MS = 30_000;
/** So many tickets a minute one device may ask for without a session, from one address: its visits, each again and again. */
const TICKETS = { most: 240, windowMs: 60_000 } as const;

/** As what a connection was let in, so that it can be looked at again. */
export type Admitted =
  /** At this machine, while nobody was added. */
  | { readonly by: 'here' }
  | { readonly by: 'session'; readonly session: string; readonly visit: string }
  | { readonly by: 'device'; readonly device: string };

/** A request by HTTP as a device signed it. */
export interface DeviceRequest {
  readonly ticket: string | undefined;
  readonly signature: string | undefined;
  readonly method: string;
  readonly path: string;
  /** SHA-256 of the body in hexadecimal. */
  readonly body: string;
  /** Whose it says it is, and of which visit. */
  readonly device: string;
  readonly visit: string;
}

interface TicketDetail {
  readonly session?: string;
  readonly device?: string;
}

/** Lets connections of the WebSocket in: by a ticket, by a device's key, for its own company, visits and streams alone. */
export class Gate {
  readonly #people: People;
  readonly #store: Pick<EventStore, 'streams'>;

  constructor(people: People, store: Pick<EventStore, 'streams'>) {
    this.#people = people;
    this.#store = store;
  }

  /**
   * A ticket for one connection, to whoever has a session or says that they are a paired device, which its signature has
   * to show then; undefined where none is needed.
   * @throws {ServerError} sign-in-needed, try-later.
   */
  async ticketFor(
    caller: Caller | undefined,
    device: string | undefined,
    address: string,
  ): Promise<string | undefined> {
    if (await this.#people.isOpen()) return undefined;
    const { store, clock } = this.#people;
    const paired = device === undefined ? undefined : await store.device(device);
    if (caller === undefined) {
      if (paired === undefined) throw new ServerError('sign-in-needed', 'or pair this device');
      const tries = await store.countAttempt(`ticket/${paired.device}/${address}`, clock(), TICKETS.windowMs);
      if (tries > TICKETS.most) throw new ServerError('try-later');
    }
    const detail: TicketDetail = {
      ...(caller?.session === undefined ? {} : { session: caller.session }),
      ...(paired === undefined ? {} : { device: paired.device }),
    };
    const ticket = newToken();
    await store.addCode({
      kind: 'ticket',
      hash: hashOf(ticket),
      company: caller?.company ?? paired?.company ?? '',
      person: caller?.person ?? paired?.person ?? '',
      detail: JSON.stringify(detail),
      expiresAt: clock() + TICKET_MS,
    });
    return ticket;
  }

  /** Lets the first message of a connection in, or says why not; that is put on the trail. */
  async admit(message: Hello | Watch): Promise<Admitted | CloseReason> {
    const company = message.kind === 'hello' ? message.stream.company : message.company;
    if (await this.#people.isOpen()) {
      if (company !== LOCAL_COMPANY) return closeReason('company-foreign');
      return message.kind === 'hello' && isServers(message.stream.device)
        ? closeReason('stream-foreign')
        : { by: 'here' };
    }
    const outcome = await this.#judge(message, company);
    if (typeof outcome === 'object' && 'by' in outcome) return outcome;
    const [code, who] = outcome;
    const visit = message.kind === 'hello' ? message.stream.visit : message.visit;
    const asked = 'company' in who ? `${company}/${visit}` : '';
    await this.#people.auditor.refused(message.kind, who, `${code} ${asked}`.trim());
    return closeReason(code);
  }

  /**
   * Lets a request by HTTP in, by which a device hands in what is kept beside its own events: by a ticket of its own, with
   * its signature over this one request. At this machine, while nobody was added, it is whoever sits there.
   *
   * @returns the company that it writes in
   * @throws {ServerError} sign-in-needed, key-wrong, device-unknown, role-refused.
   */
  async admitRequest(asked: DeviceRequest): Promise<{ readonly company: string; readonly person: string }> {
    const { store, clock } = this.#people;
    if (await this.#people.isOpen()) return { company: LOCAL_COMPANY, person: '' };
    const { ticket, signature, device: named } = asked;
    const taken = ticket === undefined ? 'unknown' : await store.takeCode('ticket', hashOf(ticket), clock());
    if (ticket === undefined || typeof taken === 'string')
      throw new ServerError('sign-in-needed', 'or pair this device');
    const { device: name } = JSON.parse(taken.detail) as TicketDetail;
    const device = name === undefined ? undefined : await store.device(name);
    if (device === undefined || device.revokedAt !== undefined) {
      throw new ServerError('sign-in-needed', 'or pair this device');
    }
    if (!signedBy(device, requestText({ ...asked, ticket }), signature ?? '')) throw new ServerError('key-wrong');
    // A stream belongs to its device, and so does what is kept beside it.
    if (device.device !== named) throw new ServerError('device-unknown', named);
    const person = await store.person(device.company, device.person);
    if (person === undefined || !may(person.role, 'write-visits')) throw new ServerError('role-refused');
    if (!(await this.#mayWriteIn(device, asked.visit))) throw new ServerError('visit-unknown', asked.visit);
    return { company: device.company, person: person.person };
  }

  /** Whether what a connection was let in by still holds; a reason to close it where it does not. */
  async look(admitted: Admitted, kind: 'hello' | 'watch'): Promise<CloseReason | undefined> {
    const { store } = this.#people;
    switch (admitted.by) {
      case 'here':
        return (await this.#people.isOpen()) ? undefined : closeReason('sign-in-needed');
      case 'session':
        return this.#lookAtReader(admitted.session, admitted.visit);
      case 'device': {
        const device = await store.device(admitted.device);
        if (device === undefined || device.revokedAt !== undefined) return closeReason('device-revoked');
        const person = await store.person(device.company, device.person);
        const writes = person !== undefined && may(person.role, 'write-visits');
        return kind === 'watch' || writes ? undefined : closeReason('role-refused');
      }
    }
  }

  /** A session may have ended, and a role may be another since. */
  async #lookAtReader(session: string, visit: string): Promise<CloseReason | undefined> {
    const caller = await this.#people.callerOfSession(session);
    if (caller === undefined) return closeReason('sign-in-needed');
    const reads = await mayReadVisit(caller, visit, this.#people.store, this.#store);
    return reads ? undefined : closeReason('visit-foreign');
  }

  async #judge(message: Hello | Watch, company: string): Promise<Admitted | Refused> {
    const { store, clock } = this.#people;
    const { ticket } = message;
    if (ticket === undefined) return ['sign-in-needed', {}];
    const taken = await store.takeCode('ticket', hashOf(ticket), clock());
    if (taken === 'expired') return ['ticket-late', {}];
    if (typeof taken === 'string') return ['ticket-wrong', {}];
    const { session, device: name } = JSON.parse(taken.detail) as TicketDetail;
    const caller = session === undefined ? undefined : await this.#people.callerOfSession(session);
    const device = name === undefined ? undefined : await store.device(name);
    return message.kind === 'hello'
      ? this.#judgeHello(message, company, device)
      : this.#judgeWatch(message, company, caller, device);
  }

  /** A stream belongs to its device: nobody else writes in it, whoever they are. */
  async #judgeHello(hello: Hello, company: string, device: Device | undefined): Promise<Admitted | Refused> {
    const who = device ?? {};
    if (device === undefined) return ['device-unpaired', who];
    const revoked = refusalOf(device, hello);
    if (revoked !== undefined) return [revoked, who];
    if (company !== device.company) return ['company-foreign', who];
    if (hello.stream.device !== device.device) return ['stream-foreign', who];
    const person = await this.#people.store.person(device.company, device.person);
    if (person === undefined || !may(person.role, 'write-visits')) return ['role-refused', who];
    if (!(await this.#mayWriteIn(device, hello.stream.visit))) return ['visit-foreign', who];
    return { by: 'device', device: device.device };
  }

  /** A visit is written by the device that begins it, and by those that took it over: also what they held until later. */
  async #mayWriteIn({ company, device }: Device, visit: string): Promise<boolean> {
    const leases = await this.#people.store.leases(company, visit);
    if (leases.some((lease) => lease.device === device)) return true;
    const streams = await this.#store.streams(company, visit);
    if (streams.some((stream) => stream.device === device)) return true;
    if ((await this.#people.store.olderLease(company, visit)) === device) return true;
    return streams.length === 0 && leases.length === 0;
  }

  async #judgeWatch(
    watch: Watch,
    company: string,
    caller: Caller | undefined,
    device: Device | undefined,
  ): Promise<Admitted | Refused> {
    if (caller !== undefined) {
      if (company !== caller.company) return ['company-foreign', caller];
      const reads = await mayReadVisit(caller, watch.visit, this.#people.store, this.#store);
      return reads
        ? { by: 'session', session: caller.session as string, visit: watch.visit }
        : ['visit-foreign', caller];
    }
    if (device === undefined) return ['sign-in-needed', {}];
    const revoked = refusalOf(device, watch);
    if (revoked !== undefined) return [revoked, device];
    if (company !== device.company) return ['company-foreign', device];
    const streams = await this.#store.streams(company, watch.visit);
    const writesIn = streams.some((stream) => stream.device === device.device);
    return writesIn ? { by: 'device', device: device.device } : ['visit-foreign', device];
  }
}

type Refused = readonly [RefusalCode, Pick<Device, 'company' | 'person' | 'device'> | Caller | Record<string, never>];

function refusalOf(device: Device, message: Hello | Watch): RefusalCode | undefined {
  if (device.revokedAt !== undefined) return 'device-revoked';
  return signedBy(device, openingText(message), message.signature ?? '') ? undefined : 'signature-wrong';
}

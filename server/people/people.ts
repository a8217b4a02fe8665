import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import type { Role } from '../../grammar/visit/roles.ts';
import { ServerError } from '../errors.ts';
import { Auditor, type Doer } from './auditor.ts';
import type { PeopleStore, Person } from './people-store.ts';
import { hashOf, newCode, newToken } from './secrets.ts';

/** Whom a request speaks for. */
export interface Caller {
  readonly company: string;
  readonly role: Role;
  /** Empty for whoever sits at this machine, while nobody was added. */
  readonly person: string;
  readonly name: string;
  readonly login: string;
  /** The hash of the session; undefined at this machine. */
  readonly session: string | undefined;
  /** How the session began: 'password', 'passkey' or 'link'. */
  readonly by: string;
}

/** A session that nobody used so long has ended, and so has one that is so old: twelve hours, seven days. */
export const SESSION = { idleMs: 43_200_000, longestMs: 604_800_000 } as const;
/** A use is noted at most so often: not every request writes to the disk. */
const NOTE_USE_MS = 60_000;
/** Clocks of several servers may differ by so much. */
const CLOCK_SLACK_MS = 300_000;
/** A link to set oneself up by lasts a day. */
const LINK_MS = 86_400_000;
const SWEEP_MS = 3_600_000;

/** Whoever sits at a machine that only that machine can reach, while it knows nobody. */
const HERE: Caller = {
  company: LOCAL_COMPANY,
  role: 'keeper',
  person: '',
  name: '',
  login: '',
  session: undefined,
  by: '',
};

export interface PeopleOptions {
  readonly store: PeopleStore;
  /** Milliseconds since 1970. */
  readonly clock: () => number;
  /** Only this machine reaches the server: it needs nobody to sign in until somebody is added. */
  readonly loopback: boolean;
}

/** Who there is, who has come in, and what was changed about them. */
export class People {
  readonly store: PeopleStore;
  readonly clock: () => number;
  readonly auditor: Auditor;
  readonly #loopback: boolean;
  readonly #listeners = new Set<() => void>();
  readonly #sweeping: NodeJS.Timeout;

  constructor({ store, clock, loopback }: PeopleOptions) {
    this.store = store;
    this.clock = clock;
    this.#loopback = loopback;
    this.auditor = new Auditor(store, clock);
    this.#sweeping = setInterval(() => void store.sweep(clock(), SESSION).catch(() => undefined), SWEEP_MS);
    this.#sweeping.unref();
  }

  /** True where nobody needs to sign in: on loopback, while nobody was added. */
  async isOpen(): Promise<boolean> {
    return this.#loopback && !(await this.store.hasPeople());
  }

  /** Whom a session's secret speaks for; undefined where that is nobody, any more. */
  async callerOf(token: string | undefined): Promise<Caller | undefined> {
    if (await this.isOpen()) return HERE;
    return token === undefined ? undefined : this.callerOfSession(hashOf(token));
  }

  async callerOfSession(hash: string): Promise<Caller | undefined> {
    const session = await this.store.session(hash);
    if (session === undefined) return undefined;
    const now = this.clock();
    const isOld = now - session.lastUsedAt > SESSION.idleMs || now - session.createdAt > SESSION.longestMs;
    // The clock was set back since: how old it is cannot be told any more.
    const ended = isOld || session.createdAt > now + CLOCK_SLACK_MS;
    const person = await this.store.person(session.company, session.person);
    if (ended || person === undefined || person.removedAt !== undefined) {
      await this.store.endSession(hash);
      return undefined;
    }
    if (now - session.lastUsedAt > NOTE_USE_MS) await this.store.noteUse(hash, now);
    return { ...callerFrom(person), session: hash, by: session.by };
  }

  /** Begins a session; resolves to its secret, which nobody keeps but the browser. */
  async beginSession(person: Person, by: 'password' | 'passkey' | 'link'): Promise<string> {
    const token = newToken();
    const now = this.clock();
    const { company, person: who } = person;
    await this.auditor.done('sign-in', person, by);
    await this.store.addSession({ hash: hashOf(token), company, person: who, by, createdAt: now, lastUsedAt: now });
    return token;
  }

  async endSession(caller: Caller): Promise<void> {
    if (caller.session === undefined) return;
    await this.auditor.done('sign-out', caller);
    await this.store.endSession(caller.session);
    this.changed();
  }

  /**
   * Adds a person who cannot come in yet; resolves to them and the code of a link by which they set themselves up.
   * @throws {ServerError} login-taken, first-keeper.
   */
  async addPerson(
    by: Doer & { readonly company: string },
    given: Pick<Person, 'login' | 'name' | 'role'>,
  ): Promise<{ readonly person: Person; readonly code: string }> {
    const { company } = by;
    const isFirst = (await this.store.people(company)).length === 0;
    if (isFirst && given.role !== 'keeper') throw new ServerError('first-keeper');
    const now = this.clock();
    await this.store.addCompany({ company, name: company, createdAt: now });
    const person: Person = {
      ...given,
      person: `p-${newCode()}`,
      company,
      password: undefined,
      createdAt: now,
      removedAt: undefined,
    };
    if (!(await this.store.addPerson(person))) throw new ServerError('login-taken', given.login);
    await this.auditor.done('person added', by, `${person.person} ${given.role}`);
    const code = await this.makeLink(by, person);
    this.changed();
    return { person, code };
  }

  /** The code of a link by which a person sets themselves up, once, within a day. */
  async makeLink(by: Doer, { company, person }: Person): Promise<string> {
    const code = newCode();
    await this.auditor.done('link made', by, person);
    const expiresAt = this.clock() + LINK_MS;
    await this.store.addCode({ kind: 'set-up', hash: hashOf(code), company, person, detail: '', expiresAt });
    return code;
  }

  /**
   * Somebody of the company who is not removed.
   * @throws {ServerError} person-unknown.
   */
  async present(company: string, who: string): Promise<Person> {
    const person = await this.store.person(company, who);
    if (person === undefined || person.removedAt !== undefined) throw new ServerError('person-unknown', who);
    return person;
  }

  /** Calls back when somebody may have lost what they were let in by; returns what ends that. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** To be told after any change to people, devices or sessions: open connections are looked at again. */
  changed(): void {
    for (const listener of this.#listeners) listener();
  }

  async close(): Promise<void> {
    clearInterval(this.#sweeping);
    await this.auditor.close();
    await this.store.close();
  }
}

function callerFrom({
  company,
  role,
  person,
  name,
  login,
}: Person): Pick<Caller, 'company' | 'role' | 'person' | 'name' | 'login'> {
  return { company, role, person, name, login };
}

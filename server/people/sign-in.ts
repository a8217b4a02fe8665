import { ServerError } from '../errors.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import { Passwords } from './passwords.ts';
import type { Caller, People } from './people.ts';
import type { Person } from './people-store.ts';
import { hashOf, newToken } from './secrets.ts';

/** So many wrong passwords in a row a sign-in name, or a browser that is known for it, may try within the window. */
export const SIGN_IN_TRIES = { most: 10, windowMs: 900_000 } as const;

/** What a browser that signed in once carries, so that who guesses at a name does not lock its owner out. */
type KnownBrowser = string;

/** Sign-in by password, and the set-up links that come before one. */
export class SignIn {
  readonly #people: People;
  readonly #signer: Pick<ReceiptSigner, 'signText' | 'verifies'>;
  readonly #passwords = new Passwords();

  constructor(people: People, signer: Pick<ReceiptSigner, 'signText' | 'verifies'>) {
    this.#people = people;
    this.#signer = signer;
  }

  /**
   * Begins a session; resolves to its secret. Wrong names and wrong passwords are told alike, and take as long.
   * @param known what this browser was given when it signed in before
   * @throws {ServerError} sign-in-wrong, try-later.
   */
  async byPassword(
    given: { readonly login: string; readonly password: string },
    known: KnownBrowser | undefined,
  ): Promise<string> {
    const { store, clock } = this.#people;
    const login = given.login.toLowerCase();
    const nonce = this.#knownBy(login, known);
    const browser = nonce === undefined ? undefined : hashOf(nonce);
    // Without room nothing is counted either: names that are made up would fill the disk.
    if (!this.#passwords.hasRoom(browser !== undefined)) throw new ServerError('try-later');
    // Counted before the password is looked at: tries that run at once are counted too.
    const key = `sign-in/${browser ?? `name/${hashOf(login)}`}`;
    const tries = await store.countAttempt(key, clock(), SIGN_IN_TRIES.windowMs);
    if (tries > SIGN_IN_TRIES.most) throw new ServerError('try-later');
    const person = await store.personByLogin(login);
    const right = await this.#passwords.matches(person?.password, given.password, browser !== undefined);
    if (!right || person === undefined) throw new ServerError('sign-in-wrong');
    await store.forgetAttempts(key);
    return this.#people.beginSession(person, 'password');
  }

  /**
   * Uses up a set-up link and begins a session that may set a password or a passkey.
   * @throws {ServerError} code-wrong.
   */
  async byLink(code: string): Promise<{ readonly token: string; readonly person: Person }> {
    const { store, clock } = this.#people;
    const taken = await store.takeCode('set-up', hashOf(code), clock());
    if (typeof taken === 'string') throw new ServerError('code-wrong');
    const person = await this.#people.present(taken.company, taken.person);
    return { token: await this.#people.beginSession(person, 'link'), person };
  }

  /**
   * Sets the caller's password and ends all their other sessions. Who came by a link need not know the old one.
   * @throws {ServerError} sign-in-wrong, password-weak, try-later.
   */
  async setPassword(caller: Caller, password: string, old: string | undefined): Promise<void> {
    const { store, auditor, clock } = this.#people;
    const person = await this.#people.present(caller.company, caller.person);
    if (person.password !== undefined && caller.by !== 'link') {
      const key = `password/${person.person}`;
      const tries = await store.countAttempt(key, clock(), SIGN_IN_TRIES.windowMs);
      if (tries > SIGN_IN_TRIES.most) throw new ServerError('try-later');
      if (!(await this.#passwords.matches(person.password, old ?? '', true))) throw new ServerError('sign-in-wrong');
      await store.forgetAttempts(key);
    }
    const hashed = await this.#passwords.hash(password, person.login);
    await auditor.done('password set', caller);
    await store.changePerson(caller.company, caller.person, { password: hashed });
    await store.endSessionsOf(caller.company, caller.person, caller.session);
    this.#people.changed();
  }

  /** What a browser is given to be known by for a name. */
  knownFor(login: string): KnownBrowser {
    const nonce = newToken();
    return `${nonce}.${this.#signer.signText(knownText(login, nonce)).signature}`;
  }

  /** By what a browser is told apart from others; its cookie may be written in more than one way, this may not. */
  #knownBy(login: string, known: KnownBrowser | undefined): string | undefined {
    const [nonce, signature, ...more] = known?.split('.') ?? [];
    if (nonce === undefined || signature === undefined || more.length > 0) return undefined;
    return this.#signer.verifies(knownText(login, nonce), signature) ? nonce : undefined;
  }
}

const knownText = (login: string, nonce: string) => `readback known browser 1\n${login.toLowerCase()}\n${nonce}\n`;

import {
  type AuthenticationResponseJSON,
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type PublicKeyCredentialCreationOptionsJSON,
  type PublicKeyCredentialRequestOptionsJSON,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from '@simplewebauthn/server';
import { ServerError } from '../errors.ts';
import type { Caller, People } from './people.ts';
import type { Person } from './people-store.ts';
import { hashOf } from './secrets.ts';

/** A challenge lasts five minutes. */
const CHALLENGE_MS = 300_000;
/** So many challenges to sign in an address may ask for a minute. */
const CHALLENGES = { most: 60, windowMs: 60_000 } as const;

/** Where a passkey is good: the address of the page. Its host names the relying party (WebAuthn). */
export type PageAddress = string;

/** Passkeys (W3C WebAuthn): made by who has come in, and a way to come in by the next time. */
export class Passkeys {
  readonly #people: People;

  constructor(people: People) {
    this.#people = people;
  }

  /** What the browser is asked to make a passkey with: one that is found without a name, and asks for its owner. */
  async optionsToMake(caller: Caller, page: PageAddress): Promise<PublicKeyCredentialCreationOptionsJSON> {
    const { company, person, login, name } = caller;
    const held = await this.#people.store.passkeysOf(company, person);
    const options = await generateRegistrationOptions({
      rpName: 'Readback',
      rpID: new URL(page).hostname,
      userName: login,
      userDisplayName: name,
      userID: new TextEncoder().encode(person),
      attestationType: 'none',
      excludeCredentials: held.map(({ id }) => ({ id })),
      authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
    });
    await this.#keepChallenge(options.challenge, company, person);
    return options;
  }

  /** @throws {ServerError} passkey-wrong. */
  async make(caller: Caller, response: RegistrationResponseJSON, page: PageAddress): Promise<void> {
    const { store, auditor, clock } = this.#people;
    const { company, person } = caller;
    const verified = await orWrong(() =>
      verifyRegistrationResponse({
        response,
        expectedChallenge: (challenge) => this.#takeChallenge(challenge, person),
        expectedOrigin: page,
        expectedRPID: new URL(page).hostname,
        requireUserVerification: true,
      }),
    );
    const made = verified.registrationInfo?.credential;
    if (!verified.verified || made === undefined || (await store.passkey(made.id)) !== undefined) {
      throw new ServerError('passkey-wrong');
    }
    await auditor.done('passkey made', caller);
    const publicKey = Buffer.from(made.publicKey).toString('base64url');
    await store.addPasskey({ id: made.id, company, person, publicKey, counter: made.counter, createdAt: clock() });
  }

  /** @throws {ServerError} try-later. */
  async optionsToSignIn(page: PageAddress, address: string): Promise<PublicKeyCredentialRequestOptionsJSON> {
    const { store, clock } = this.#people;
    const tries = await store.countAttempt(`passkey/${address}`, clock(), CHALLENGES.windowMs);
    if (tries > CHALLENGES.most) throw new ServerError('try-later');
    const options = await generateAuthenticationOptions({
      rpID: new URL(page).hostname,
      userVerification: 'required',
    });
    await this.#keepChallenge(options.challenge, '', '');
    return options;
  }

  /**
   * Begins a session; resolves to its secret.
   * @throws {ServerError} passkey-wrong.
   */
  async signIn(
    response: AuthenticationResponseJSON,
    page: PageAddress,
  ): Promise<{ readonly token: string; readonly person: Person }> {
    const { store } = this.#people;
    const passkey = await store.passkey(response.id);
    if (passkey === undefined) throw new ServerError('passkey-wrong');
    const { verified, authenticationInfo } = await orWrong(() =>
      verifyAuthenticationResponse({
        response,
        expectedChallenge: (challenge) => this.#takeChallenge(challenge, ''),
        expectedOrigin: page,
        expectedRPID: new URL(page).hostname,
        credential: {
          id: passkey.id,
          publicKey: new Uint8Array(Buffer.from(passkey.publicKey, 'base64url')),
          counter: passkey.counter,
        },
        requireUserVerification: true,
      }),
    );
    if (!verified) throw new ServerError('passkey-wrong');
    const person = await this.#people.present(passkey.company, passkey.person);
    await store.countPasskey(passkey.id, authenticationInfo.newCounter);
    return { token: await this.#people.beginSession(person, 'passkey'), person };
  }

  async #keepChallenge(challenge: string, company: string, person: string): Promise<void> {
    const { store, clock } = this.#people;
    const expiresAt = clock() + CHALLENGE_MS;
    await store.addCode({ kind: 'passkey', hash: hashOf(challenge), company, person, detail: '', expiresAt });
  }

  async #takeChallenge(challenge: string, person: string): Promise<boolean> {
    const { store, clock } = this.#people;
    const taken = await store.takeCode('passkey', hashOf(challenge), clock());
    return typeof taken !== 'string' && taken.person === person;
  }
}

/** The library throws at what does not fit: that is an answer of the browser's, not a fault of ours. */
async function orWrong<Result>(verify: () => Promise<Result>): Promise<Result> {
  try {
    return await verify();
  } catch (error) {
    throw new ServerError('passkey-wrong', '', error);
  }
}

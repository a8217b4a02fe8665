import { createPublicKey, type KeyObject, verify } from 'node:crypto';
import { pairingText, type ShownToPair } from '../../grammar/visit/device-texts.ts';
import { isServers } from '../../grammar/visit/known-names.ts';
import { ServerError } from '../errors.ts';
import type { Doer } from './auditor.ts';
import type { People } from './people.ts';
import type { Device, Person } from './people-store.ts';
import { hashOf, newCode } from './secrets.ts';

/** A pairing code lasts five minutes. */
export const PAIRING_MS = 300_000;

/** Pairs devices with people, and takes that back. */
export class Devices {
  readonly #people: People;

  constructor(people: People) {
    this.#people = people;
  }

  /** A code that pairs one device with the person, once, within five minutes. */
  async makePairing(by: Doer, person: Person): Promise<{ readonly code: string; readonly expiresAt: number }> {
    const { store, auditor, clock } = this.#people;
    const code = newCode();
    const expiresAt = clock() + PAIRING_MS;
    await auditor.done('pairing code made', by, person.person);
    const { company, person: who } = person;
    await store.addCode({ kind: 'pairing', hash: hashOf(code), company, person: who, detail: '', expiresAt });
    return { code, expiresAt };
  }

  /**
   * Pairs the device that shows the code, and shows that it holds the key.
   * @throws {ServerError} code-wrong, key-wrong, device-taken.
   */
  async pair(asked: ShownToPair & { readonly code: string }): Promise<Device> {
    const { store, auditor, clock } = this.#people;
    const { code, device: name, publicKey, signature } = asked;
    const key = readKey(publicKey);
    if (isServers(name)) throw new ServerError('device-taken', name);
    const isKey = key !== undefined && isOwnWriting(publicKey, key);
    if (!isKey || !signed(key, pairingText(code, name), signature)) throw new ServerError('key-wrong');
    const taken = await store.takeCode('pairing', hashOf(code.toLowerCase()), clock());
    if (typeof taken === 'string') throw new ServerError('code-wrong');
    const { company, person } = await this.#people.present(taken.company, taken.person);
    const device: Device = {
      device: name,
      company,
      person,
      publicKey,
      pairedAt: clock(),
      revokedAt: undefined,
    };
    if (!(await store.addDevice(device))) throw new ServerError('device-taken', name);
    await auditor.done('device paired', { company, person, device: name });
    this.#people.changed();
    return device;
  }

  /** @throws {ServerError} device-unknown. */
  async revoke(by: Doer & { readonly company: string }, device: string): Promise<void> {
    const { store, auditor, clock } = this.#people;
    const known = await store.device(device);
    if (known?.company !== by.company) throw new ServerError('device-unknown', device);
    await auditor.done('device revoked', by, device);
    await store.revokeDevice(by.company, device, clock());
    this.#people.changed();
  }
}

/** Whether the text was signed by the private key that belongs to the device's public one. */
export function signedBy(device: Device, text: string, signature: string): boolean {
  const key = readKey(device.publicKey);
  return key !== undefined && signed(key, text, signature);
}

/** ECDSA over P-256 with SHA-256, r and s one after another as WebCrypto writes them (IEEE P1363). */
function signed(key: KeyObject, text: string, signature: string): boolean {
  return verify('sha256', Buffer.from(text), { key, dsaEncoding: 'ieee-p1363' }, Buffer.from(signature, 'base64url'));
}

/** Nothing stands in it beside the key: one key has one writing. */
function isOwnWriting(spki: string, key: KeyObject): boolean {
  return key.export({ format: 'der', type: 'spki' }).toString('base64url') === spki;
}

/** A P-256 key as SPKI in base64url; undefined where it is none. */
function readKey(spki: string): KeyObject | undefined {
  try {
    const key = createPublicKey({ key: Buffer.from(spki, 'base64url'), format: 'der', type: 'spki' });
    return key.asymmetricKeyDetails?.namedCurve === 'prime256v1' ? key : undefined;
  } catch {
    return undefined;
  }
}

import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import { BOUND_TO_FILE, boundText, openBody, type TextCipher } from '../../grammar/visit/personal.ts';
import type { VisitKey } from './personal-store.ts';

/** Of AES-GCM (NIST SP 800-38D): the nonce before what was sealed, and the tag behind it. Bytes. */
const NONCE = 12;
const TAG = 16;

/** Opens the bodies of a visit, each by the key of the device that wrote it. */
export async function openBodies(
  events: readonly { readonly device: string; readonly body: string }[],
  keys: readonly VisitKey[],
): Promise<readonly string[]> {
  const ciphers = new Map(keys.flatMap(({ device, key }) => (key === undefined ? [] : [[device, cipherOf(key)]])));
  return Promise.all(events.map(({ device, body }) => openBody(body, ciphers.get(device))));
}

/** A sealed file as it was; undefined where the key is another one. */
export function openFile(sealed: Uint8Array, key: Uint8Array): Buffer | undefined {
  return open(sealed, key, BOUND_TO_FILE);
}

/** Seals and opens texts by a key of 32 bytes, as a device does. */
export function cipherOf(key: Uint8Array): TextCipher {
  return {
    open: async (sealed, name) => open(Buffer.from(sealed, 'base64url'), key, boundText(name))?.toString('utf8'),
    seal: async (text, name) => seal(Buffer.from(text, 'utf8'), key, boundText(name)).toString('base64url'),
  };
}

function seal(bytes: Uint8Array, key: Uint8Array, bound: string): Buffer {
  const nonce = randomBytes(NONCE);
  const cipher = createCipheriv('aes-256-gcm', key, nonce);
  cipher.setAAD(Buffer.from(bound, 'utf8'));
  return Buffer.concat([nonce, cipher.update(bytes), cipher.final(), cipher.getAuthTag()]);
}

function open(sealed: Uint8Array, key: Uint8Array, bound: string): Buffer | undefined {
  if (sealed.length < NONCE + TAG) return undefined;
  const decipher = createDecipheriv('aes-256-gcm', key, sealed.subarray(0, NONCE), { authTagLength: TAG });
  decipher.setAAD(Buffer.from(bound, 'utf8'));
  decipher.setAuthTag(sealed.subarray(sealed.length - TAG));
  try {
    return Buffer.concat([decipher.update(sealed.subarray(NONCE, sealed.length - TAG)), decipher.final()]);
  } catch {
    return undefined;
  }
}

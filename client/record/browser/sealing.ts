import { BOUND_TO_FILE, boundText, type TextCipher } from '../../../grammar/visit/personal.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/** Of AES-GCM (NIST SP 800-38D), in bytes; left to chance for each text and file. */
const NONCE = 12;

/** What seals and opens by one key of 32 bytes. Sealed is: nonce, what was sealed, tag of 16 bytes. */
export interface Cipher extends TextCipher {
  sealFile(file: Bytes): Promise<Bytes>;
  /** Undefined where it was not sealed by this key. */
  openFile(sealed: Bytes): Promise<Bytes | undefined>;
}

/** By the browser's own AES-GCM: it is only there in a secure context, as the hashes of the record are. */
export async function cipherOf(raw: Bytes): Promise<Cipher> {
  const key = await crypto.subtle.importKey('raw', raw, 'AES-GCM', false, ['encrypt', 'decrypt']);
  return {
    seal: async (text, name) => toBase64url(await seal(key, new TextEncoder().encode(text), boundText(name))),
    open: async (sealed, name) => {
      const opened = await open(key, fromBase64url(sealed), boundText(name));
      return opened === undefined ? undefined : new TextDecoder().decode(opened);
    },
    sealFile: (file) => seal(key, file, BOUND_TO_FILE),
    openFile: (sealed) => open(key, sealed, BOUND_TO_FILE),
  };
}

async function seal(key: CryptoKey, plain: Bytes, bound: string): Promise<Bytes> {
  const iv = crypto.getRandomValues(new Uint8Array(NONCE));
  const sealed = await crypto.subtle.encrypt(manner(iv, bound), key, plain);
  const whole = new Uint8Array(NONCE + sealed.byteLength);
  whole.set(iv);
  whole.set(new Uint8Array(sealed), NONCE);
  return whole;
}

async function open(key: CryptoKey, sealed: Bytes, bound: string): Promise<Bytes | undefined> {
  try {
    const plain = await crypto.subtle.decrypt(manner(sealed.slice(0, NONCE), bound), key, sealed.slice(NONCE));
    return new Uint8Array(plain);
  } catch {
    return undefined;
  }
}

function manner(iv: Bytes, bound: string) {
  return { name: 'AES-GCM', iv, additionalData: new TextEncoder().encode(bound) };
}

function toBase64url(bytes: Bytes): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** Empty where it is none. */
export function fromBase64url(text: string): Bytes {
  try {
    return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
  } catch {
    return new Uint8Array(0);
  }
}

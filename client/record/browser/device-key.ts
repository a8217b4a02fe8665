import { type DBSchema, openDB } from 'idb';
import { pairingText } from '../../../grammar/visit/device-texts.ts';

/** As what this browser was paired. */
export interface Pairing {
  readonly company: string;
  readonly device: string;
  /** P-256; the browser gives it to nobody, not even to this page. */
  readonly privateKey: CryptoKey;
}

interface KeySchema extends DBSchema {
  pairing: { key: 'own'; value: Pairing };
}

const CURVE = { name: 'ECDSA', namedCurve: 'P-256' } as const;
const SIGNING = { name: 'ECDSA', hash: 'SHA-256' } as const;
/** Beside the records, in a database of its own: its form is not theirs. */
const NAME = 'readback-device';

/** As what this browser was paired; undefined where it was not. */
export async function readPairing(): Promise<Pairing | undefined> {
  const database = await openKeys();
  try {
    return await database.get('pairing', 'own');
  } finally {
    database.close();
  }
}

/** Answers of the server to a pairing: what it is paired as, or why it is not, in a sentence. */
export type PairingAnswer = { readonly paired: Pairing } | { readonly sentence: string };

/**
 * Makes a key that never leaves this browser, and pairs it by a keeper's code. Nothing is kept where that is refused.
 * Rejects where there is no network.
 */
export async function pairDevice(code: string, device: string): Promise<PairingAnswer> {
  const { publicKey, privateKey } = await crypto.subtle.generateKey(CURVE, false, ['sign', 'verify']);
  const spki = base64url(await crypto.subtle.exportKey('spki', publicKey));
  const signature = await signWith(privateKey, pairingText(code, device));
  const response = await fetch('/api/pair', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code, device, publicKey: spki, signature }),
  });
  const answer = (await response.json()) as { company: string; device: string; sentence: string };
  if (!response.ok) return { sentence: answer.sentence };
  const pairing: Pairing = { company: answer.company, device: answer.device, privateKey };
  const database = await openKeys();
  try {
    await database.put('pairing', pairing, 'own');
  } finally {
    database.close();
  }
  return { paired: pairing };
}

/** ECDSA with SHA-256 over the text's UTF-8: r and s, 64 bytes, in base64url. */
export function signAs({ privateKey }: Pairing, text: string): Promise<string> {
  return signWith(privateKey, text);
}

async function signWith(key: CryptoKey, text: string): Promise<string> {
  return base64url(await crypto.subtle.sign(SIGNING, key, new TextEncoder().encode(text)));
}

function openKeys() {
  return openDB<KeySchema>(NAME, 1, {
    upgrade: (database) => {
      database.createObjectStore('pairing');
    },
  });
}

function base64url(bytes: ArrayBuffer): string {
  return btoa(String.fromCharCode(...new Uint8Array(bytes)))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');
}

import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  hash,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { type Hash, streamText } from '../../grammar/visit/envelope.ts';
import { type Receipt, receiptText, rootText } from '../../grammar/visit/messages.ts';
import { receiptTree } from '../../grammar/visit/receipt-tree.ts';
import { ServerError } from '../errors.ts';

/** The key's file in a data folder. */
export const KEY_FILE = 'receipt-key.pem';

/** Signs that this server held an event at a time: what a device keeps against a record that is cut or written anew. */
export interface ReceiptSigner {
  /** The raw Ed25519 public key, 32 bytes in base64url. */
  readonly publicKey: string;
  /** The SHA-256 of the raw public key: how receipts and heads name it. */
  readonly keyName: Hash;
  /** Signs any text: the key's name, and 64 bytes in base64url. */
  signText(text: string): { readonly key: Hash; readonly signature: string };
  /** Whether a signature of 64 bytes in base64url is this key's, of this text. */
  verifies(text: string, signature: string): boolean;
  /**
   * Signs beside the event loop, and all that is asked for in one turn of it by one signature: a signature takes as long
   * as all else that is done for an event.
   */
  sign(held: Held): Promise<Receipt>;
}

/** What a receipt speaks of. */
type Held = Pick<Receipt, 'stream' | 'seq' | 'hash' | 'time'>;

interface Asked {
  readonly held: Held;
  readonly text: string;
  readonly signed: (receipt: Receipt) => void;
  readonly failed: (error: unknown) => void;
}

const signAside = promisify(sign);

/**
 * The server's key in its data folder, made where there is none. Lost, it is made anew: old receipts then name a key
 * that nobody holds, and still prove what they prove to who kept the old public key.
 * @throws {ServerError} data-unwritable, key-damaged.
 */
export function openReceiptSigner(path: string): ReceiptSigner {
  return signerWith(readKey(path) ?? makeKey(path));
}

/** A new key in PEM form (PKCS 8). */
export function newKeyPem(): string {
  return generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'pem' }).toString();
}

/**
 * Signs by a key in PEM form.
 * @param from where it was read, as a sentence names it
 * @throws {ServerError} key-damaged.
 */
export function signerOf(pem: string, from: string): ReceiptSigner {
  return signerWith(parseKey(pem, from));
}

function signerWith(privateKey: KeyObject): ReceiptSigner {
  const { x: publicKey } = createPublicKey(privateKey).export({ format: 'jwk' }) as { x: string };
  const { keyName: key, verifies } = verifierOf(publicKey);
  const signText = (text: string) => ({
    key,
    signature: sign(null, Buffer.from(text, 'utf8'), privateKey).toString('base64url'),
  });
  return {
    publicKey,
    keyName: key,
    signText,
    verifies,
    sign: signTogether(key, (text) => signAside(null, Buffer.from(text, 'utf8'), privateKey)),
  };
}

/**
 * What checks signatures where only the public key is at hand.
 *
 * @param publicKey 32 bytes in base64url
 * @throws {ServerError} tool-wrong, where it is none.
 */
export function verifierOf(publicKey: string): Pick<ReceiptSigner, 'keyName' | 'verifies'> {
  const raw = Buffer.from(publicKey, 'base64url');
  if (raw.length !== 32) throw new ServerError('tool-wrong', `"${publicKey}" is no public key: 32 bytes in base64url.`);
  const key = createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x: publicKey }, format: 'jwk' });
  return {
    keyName: createHash('sha256').update(raw).digest('hex'),
    verifies: (text, signature) => verify(null, Buffer.from(text, 'utf8'), key, Buffer.from(signature, 'base64url')),
  };
}

/** Gathers what is to be signed until the turn of the event loop is over; one alone needs no tree. */
function signTogether(key: Hash, signText: (text: string) => Promise<Buffer>): ReceiptSigner['sign'] {
  let asked: Asked[] = [];
  const signAll = async (all: readonly Asked[]) => {
    const [only] = all;
    const tree = receiptTree(
      all.map(({ text }) => text),
      sha256,
    );
    const text = all.length === 1 && only !== undefined ? only.text : rootText(tree.root);
    const signature = (await signText(text)).toString('base64url');
    for (const [at, { held, signed }] of all.entries()) {
      signed({ ...held, key, signature, ...(all.length === 1 ? {} : { path: tree.paths[at] ?? [] }) });
    }
  };
  return (held) =>
    new Promise((signed, failed) => {
      asked.push({ held, text: receiptText({ ...held, streamText: streamText(held.stream) }), signed, failed });
      if (asked.length > 1) return;
      setImmediate(() => {
        const all = asked;
        asked = [];
        signAll(all).catch((error) => {
          for (const one of all) one.failed(error);
        });
      });
    });
}

const sha256 = (bytes: Uint8Array) => hash('sha256', bytes, 'buffer');

function readKey(path: string): KeyObject | undefined {
  let pem: string;
  try {
    pem = readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw new ServerError('data-unwritable', path, error);
  }
  return parseKey(pem, path);
}

function parseKey(pem: string, from: string): KeyObject {
  try {
    const key = createPrivateKey(pem);
    if (key.asymmetricKeyType === 'ed25519') return key;
  } catch {
    // Said below, as for a key of another kind.
  }
  throw new ServerError('key-damaged', from);
}

function makeKey(path: string): KeyObject {
  const pem = newKeyPem();
  try {
    const file = openSync(path, 'wx', 0o600);
    writeFileSync(file, pem);
    fsyncSync(file);
    closeSync(file);
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
  return createPrivateKey(pem);
}

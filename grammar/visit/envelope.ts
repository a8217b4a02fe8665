import { utf8Bytes } from './utf8.ts';

/**
 * One writer's part of a visit: what one device wrote down in one epoch, numbered 1..n without a gap.
 * A new epoch begins where a device can no longer continue its own numbering (a restored backup); a number is never
 * used twice.
 */
export interface StreamId {
  readonly company: string;
  readonly visit: string;
  readonly device: string;
  /** 1 for a device's first stream of a visit. */
  readonly epoch: number;
}

/** The last link of a chain. `seq` 0 with the stream's first previous hash stands for an empty stream. */
export interface Head {
  readonly seq: number;
  readonly hash: Hash;
}

/** One event as it is kept and sent: its body is text, stored byte for byte and never written anew. */
export interface Entry {
  readonly seq: number;
  readonly hash: Hash;
  readonly body: string;
}

/** A SHA-256 in 64 lower-case hexadecimal digits. */
export type Hash = string;

/** SHA-256 (FIPS 180-4) of the bytes: 32 bytes. Browser: `crypto.subtle.digest`; Node: `createHash`. */
export type Sha256 = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array | Promise<Uint8Array>;

/** The company of a server that nobody has signed in to: one machine, reached only from itself. */
export const LOCAL_COMPANY = 'local';

/** What a company, visit or device may be called: 1 to 64 lower-case letters, digits and inner hyphens. */
export const NAME_PATTERN = '^[a-z0-9][a-z0-9-]{0,63}$';
export const HASH_PATTERN = '^[0-9a-f]{64}$';

const NAME = new RegExp(NAME_PATTERN);
const STREAM_TEXT =
  /^([a-z0-9][a-z0-9-]{0,63})\/([a-z0-9][a-z0-9-]{0,63})\/([a-z0-9][a-z0-9-]{0,63})\/([1-9][0-9]{0,14})$/;
const START_TAG = 0x00;
const LINK_TAG = 0x01;

/**
 * The one way to write a stream id: `company/visit/device/epoch`. Its UTF-8 bytes enter the hash chain.
 * @throws {RangeError} when a part does not fit NAME_PATTERN or the epoch is not a whole number from 1.
 */
export function streamText(stream: StreamId): string {
  for (const part of ['company', 'visit', 'device'] as const) {
    if (!NAME.test(stream[part])) {
      throw new RangeError(`${part} "${stream[part]}" must be 1 to 64 lower-case letters, digits and hyphens`);
    }
  }
  if (!Number.isSafeInteger(stream.epoch) || stream.epoch < 1) {
    throw new RangeError(`epoch ${stream.epoch} must be a whole number from 1`);
  }
  return `${stream.company}/${stream.visit}/${stream.device}/${stream.epoch}`;
}

/** The stream a canonical text names, or undefined where the text is not canonical. */
export function parseStreamText(text: string): StreamId | undefined {
  const [, company, visit, device, epoch] = STREAM_TEXT.exec(text) ?? [];
  if (company === undefined || visit === undefined || device === undefined || epoch === undefined) return undefined;
  return { company, visit, device, epoch: Number(epoch) };
}

/** What is hashed to begin a stream's chain: 0x00 ‖ canonical stream id in UTF-8. */
export function startBytes(stream: StreamId): Uint8Array<ArrayBuffer> {
  const id = utf8Bytes(streamText(stream));
  const bytes = new Uint8Array(1 + id.length);
  bytes[0] = START_TAG;
  bytes.set(id, 1);
  return bytes;
}

/**
 * What is hashed for one event: 0x01 ‖ seq as unsigned 64-bit big-endian ‖ previous hash (32 bytes) ‖ body in UTF-8.
 * @throws {RangeError} when seq is not a whole number from 1, the hash is not one, or the body has a lone surrogate.
 */
export function linkBytes(seq: number, previous: Hash, body: string): Uint8Array<ArrayBuffer> {
  if (!Number.isSafeInteger(seq) || seq < 1) throw new RangeError(`seq ${seq} must be a whole number from 1`);
  const text = utf8Bytes(body);
  const bytes = new Uint8Array(41 + text.length);
  bytes[0] = LINK_TAG;
  new DataView(bytes.buffer).setBigUint64(1, BigInt(seq), false);
  bytes.set(hexToBytes(previous), 9);
  bytes.set(text, 41);
  return bytes;
}

/** The head of a stream that holds nothing yet. */
export async function emptyHead(stream: StreamId, sha256: Sha256): Promise<Head> {
  return { seq: 0, hash: bytesToHex(await sha256(startBytes(stream))) };
}

/** The entries that carry on a chain from `head`, one for each body, in order. */
export async function chainBodies(head: Head, bodies: readonly string[], sha256: Sha256): Promise<readonly Entry[]> {
  const entries: Entry[] = [];
  let { seq, hash } = head;
  for (const body of bodies) {
    seq += 1;
    hash = bytesToHex(await sha256(linkBytes(seq, hash, body)));
    entries.push({ seq, hash, body });
  }
  return entries;
}

/** Lower-case hexadecimal of the bytes. */
export function bytesToHex(bytes: Uint8Array): string {
  let hex = '';
  for (const byte of bytes) hex += HEX[byte];
  return hex;
}

const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

/**
 * The 32 bytes of a hash.
 * @throws {RangeError} when it is none.
 */
export function hexToBytes(hash: Hash): Uint8Array<ArrayBuffer> {
  if (!/^[0-9a-f]{64}$/.test(hash)) throw new RangeError('a hash must be 64 lower-case hexadecimal digits');
  const bytes = new Uint8Array(32);
  for (let at = 0; at < 32; at += 1) bytes[at] = (hexDigit(hash, at * 2) << 4) | hexDigit(hash, at * 2 + 1);
  return bytes;
}

/** The value of one lower-case hexadecimal digit. */
function hexDigit(hash: Hash, at: number): number {
  const code = hash.charCodeAt(at);
  return code < 0x60 ? code - 0x30 : code - 0x57;
}

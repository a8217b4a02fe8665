import type { Entry, Hash, Head, StreamId } from './envelope.ts';

/** The version of the messages below. A server refuses a hello of another. */
export const PROTOCOL = 1;
/** The longest frame either side takes, in bytes of UTF-8. */
export const MAX_FRAME_BYTES = 65_536;
/** How many events a device sends ahead of their acknowledgement. */
export const MAX_IN_FLIGHT = 64;

/** By what a first message is let in; nothing where nobody needs to sign in. */
export interface Admission {
  /** What the server gave for this one connection (`POST /api/ticket`). */
  readonly ticket?: string;
  /** Where a device is paired: its signature over `openingText`, 64 bytes (r, s) in base64url. */
  readonly signature?: string;
}

/** Opens a stream for writing; the first message on the connection, within five seconds. Answered by `welcome`. */
export interface Hello extends Admission {
  readonly kind: 'hello';
  readonly protocol: number;
  readonly stream: StreamId;
  /** The device's wall clock, in milliseconds since 1970: a claim, kept beside the server's, never refused. */
  readonly clock?: number;
  /** The last event that the device has written: where more is told than comes, the server shows what is missing. */
  readonly head?: Head;
  /** Where a new epoch follows an older stream of the same visit and device: that stream's last link at the server.
   *  The server seals the older stream there. */
  readonly follows?: { readonly epoch: number; readonly head: Head };
}

/** One event. Answered by `ack` once it is on the disk, by `gap`, or by `fork`. */
export interface Append extends Entry {
  readonly kind: 'append';
}

/** Asks for everything of a visit beyond the heads already held, then for what follows, as it becomes durable. */
export interface Watch extends Admission {
  readonly kind: 'watch';
  readonly protocol: number;
  readonly company: string;
  readonly visit: string;
  /** What the watcher holds of each stream; a stream that is not named is sent from its first event. */
  readonly from: readonly { readonly device: string; readonly epoch: number; readonly seq: number }[];
}

export type ClientMessage = Hello | Append | Watch;

/** Where the server's copy of the stream ends. Send what follows it. */
export interface Welcome {
  readonly kind: 'welcome';
  readonly protocol: number;
  readonly head: Head;
  /** The server's wall clock, in milliseconds since 1970. */
  readonly clock: number;
}

/** Everything up to and including `seq` is on the server's disk. */
export interface Ack {
  readonly kind: 'ack';
  readonly seq: number;
  readonly hash: Hash;
  readonly receipt?: Receipt;
}

/**
 * What the server signs: that it held `hash` at `seq` of the stream at `time`. Ed25519 over `receiptText`, or, where the
 * receipt has a path, over `rootText`: one signature then speaks for many receipts (receipt-tree.ts).
 */
export interface Receipt {
  readonly stream: StreamId;
  readonly seq: number;
  readonly hash: Hash;
  /** The server's wall clock, in milliseconds since 1970. */
  readonly time: number;
  /** Which of the server's keys signed: the SHA-256 of its raw public key. */
  readonly key: Hash;
  /** 64 bytes in base64url. */
  readonly signature: string;
  /** What the receipt is joined with, from the leaf to the root that is signed: `left HASH` or `right HASH`. */
  readonly path?: readonly string[];
}

/** An event came too early: send from `need` on. */
interface Gap {
  readonly kind: 'gap';
  readonly need: number;
}

/** Another event already stands at `seq`. Both are kept and the stream is flagged; the connection closes (1008). */
interface Fork {
  readonly kind: 'fork';
  readonly seq: number;
  readonly held: Hash;
  readonly sentence: string;
}

/** Why the connection is about to close: a code to act on and a sentence to show. */
interface Refusal {
  readonly kind: 'error';
  readonly code: string;
  readonly sentence: string;
}

/** Events of a watched visit: in order of seq within a stream, of arrival at the server across streams. */
interface Events {
  readonly kind: 'events';
  readonly events: readonly WatchedEvent[];
  /** True on the message that brings the watcher level with the server for the first time. */
  readonly level: boolean;
}

export interface WatchedEvent extends Entry {
  readonly device: string;
  readonly epoch: number;
  /** The server's wall clock when it took the event, in milliseconds since 1970. */
  readonly receivedAt: number;
}

/** That the server knew who acknowledged, and when: Ed25519 over `acknowledgementText`. */
export interface Vouched {
  /** How the server knows them. */
  readonly person: string;
  /** The server's wall clock, in milliseconds since 1970. */
  readonly time: number;
  /** Which of the server's keys signed: the SHA-256 of its raw public key. */
  readonly key: Hash;
  /** 64 bytes in base64url. */
  readonly signature: string;
}

/** A supervisor, from their own device, acknowledges the live steps of the visit that is written here. */
export interface Acknowledged {
  readonly kind: 'acknowledged';
  /** Their name. */
  readonly supervisor: string;
  readonly vouched: Vouched;
}

/** Another device carries the visit on: what is written here from now on does not count. */
export interface TakenOver {
  readonly kind: 'taken-over';
  readonly device: string;
  /** The name of who took it; empty where nobody signs in. */
  readonly name: string;
  /** The server's wall clock, in milliseconds since 1970. */
  readonly time: number;
}

export type ServerMessage = Welcome | Ack | Gap | Fork | Refusal | Events | Acknowledged | TakenOver;

/** What the server signs of a supervisor's word, one line a field. */
export function acknowledgementText(
  said: Pick<Vouched, 'person' | 'time'> & Pick<Acknowledged, 'supervisor'> & Pick<Watch, 'company' | 'visit'>,
): string {
  return `readback acknowledgement 1\n${said.company}/${said.visit}\n${said.person}\n${said.supervisor}\n${said.time}\n`;
}

/** What is signed in a receipt, as text: one line a field, so that any tool can write it. */
export function receiptText(receipt: Pick<Receipt, 'seq' | 'hash' | 'time'> & { readonly streamText: string }): string {
  return `readback receipt 1\n${receipt.streamText}\n${receipt.seq}\n${receipt.hash}\n${receipt.time}\n`;
}

/** What is signed for many receipts at once: the root of the tree that they are the leaves of. */
export function rootText(root: Hash): string {
  return `readback receipts 1\n${root}\n`;
}

import { streamText } from './envelope.ts';
import type { Hello, Watch } from './messages.ts';

/** What a device shows to be paired: its name in streams, its key, and that it holds the private half. */
export interface ShownToPair {
  readonly device: string;
  /** P-256 as SPKI, in base64url. */
  readonly publicKey: string;
  /** ECDSA with SHA-256 over `pairingText`: 64 bytes (r, s) in base64url. */
  readonly signature: string;
}

/** What a device signs as it is paired. */
export function pairingText(code: string, device: string): string {
  return `readback pairing 1\n${code}\n${device}\n`;
}

/** What a device signs of its first message: the server's ticket makes each signature good for one connection alone. */
export function openingText(message: Hello | Watch): string {
  const { ticket = '' } = message;
  if (message.kind === 'watch') return `readback watch 1\n${ticket}\n${message.company}/${message.visit}\n`;
  const { seq, hash } = message.head ?? { seq: 0, hash: '' };
  return `readback hello 1\n${ticket}\n${streamText(message.stream)}\n${seq}\n${hash}\n`;
}

/** What a device signs of a request by HTTP, in which it hands in what is kept beside its events. */
export function requestText(request: {
  readonly ticket: string;
  readonly method: string;
  /** As it stands in the address, with what is asked. */
  readonly path: string;
  /** SHA-256 of the body in hexadecimal. */
  readonly body: string;
}): string {
  return `readback request 1\n${request.ticket}\n${request.method} ${request.path}\n${request.body}\n`;
}

/** The headers in which that stands. */
export const REQUEST_HEADERS = { ticket: 'x-readback-ticket', signature: 'x-readback-signature' } as const;

/** What the server signs of a sound or photo that it has whole: only then the device may forget its own. */
export function attachmentText(held: {
  readonly company: string;
  readonly visit: string;
  readonly device: string;
  readonly sha256: string;
  readonly bytes: number;
  /** The server's wall clock, in milliseconds since 1970. */
  readonly time: number;
}): string {
  const { company, visit, device, sha256, bytes, time } = held;
  return `readback attachment 1\n${company}/${visit}/${device}\n${sha256}\n${bytes}\n${time}\n`;
}

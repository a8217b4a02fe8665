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

import { createHash } from 'node:crypto';

/** SHA-256 by Node: 32 bytes. */
export function sha256(bytes: Uint8Array): Uint8Array {
  return createHash('sha256').update(bytes).digest();
}

import { createHash, randomBytes } from 'node:crypto';

/** So many bits a code has that a person may have to type, and so many one that only programs carry. */
export const CODE_BITS = 128;
const TOKEN_BITS = 256;
/** Letters and digits that are not taken for one another: 32 of them, five bits each. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz234567890';
const BITS_A_LETTER = 5;

/** A secret for cookies and tickets: 256 random bits in base64url. */
export function newToken(): string {
  return randomBytes(TOKEN_BITS / 8).toString('base64url');
}

/** A secret that can be read out and typed: at least 128 random bits in letters and digits. */
export function newCode(): string {
  const letters = Math.ceil(CODE_BITS / BITS_A_LETTER);
  return [...randomBytes(letters)].map((byte) => LETTERS[byte % LETTERS.length]).join('');
}

/** How a secret is kept: its SHA-256 in hex. It is long and random, so that nothing slower is needed. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

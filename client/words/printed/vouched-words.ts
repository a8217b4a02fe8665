import type { Head } from '../../../grammar/visit/envelope.ts';

/** What vouches for a printed record, a line each: with these, whoever keeps the paper can tell a later change. */
export const VOUCHED = {
  chain: ({ seq, hash }: Head) => `Its chain ends at entry ${seq}: ${hash}`,
  ofDevice: (device: string, { seq, hash }: Head) => `The chain of ${device} ends at entry ${seq}: ${hash}`,
  signed: (number: number, time: string, signature: string) =>
    `The server's head ${number}, signed ${time}: ${signature}`,
  unsigned: 'The server has signed no head since it took this visit.',
  incomplete: (held: number, said: number) => `Not complete: ${held} entries held, the device said ${said}.`,
} as const;

import type { Head } from '../../../grammar/visit/envelope.ts';

/** What vouches for a printed record, a line each: with these, whoever keeps the paper can tell a later change. */
export const VOUCHED = {
  chain: ({ seq, hash }: Head) => `Its chain ends at entry ${seq}: ${hash}`,
  ofDevice: (device: string, { seq, hash }: Head) => `The chain of ${device} ends at entry ${seq}: ${hash}`,
  signed: (number: number, time: string, signature: string) =>
    `The server's head ${number}, signed ${time}: ${signature}`,
  signedTo: (seq: number) => `That head names this record up to entry ${seq}, and so it stands here.`,
  signedPast: (seq: number, held: number) =>
    `That head names this record up to entry ${seq}: ${seq - held} entries are not here.`,
  signedOther: (seq: number) => `That head names another entry ${seq} than stands here: one of the two was changed.`,
  receipt: (seq: number, time: string, signature: string) =>
    `The server's receipt for entry ${seq}, signed ${time}: ${signature}`,
  noReceipt: 'No receipt of a server is at hand.',
  noHeads: 'No head that a server signed is at hand.',
  notNamed: 'The heads at hand that a server signed do not name this record.',
  noChain: 'These events came without a chain: nothing vouches for them.',
  unsigned: 'The server has signed no head since it took this visit.',
  otherVisit: (file: string, visit: string) => `${file} is of another visit, ${visit}: nothing of it was taken in.`,
  joined: (file: string, remarks: number, carriedOn: number) => {
    if (carriedOn > 0) return `Of ${file} ${carriedOn} entries were taken in: that device carried the visit on.`;
    return remarks === 0
      ? `${file} holds no remarks: nothing of it was taken in.`
      : `Of ${file} ${remarks} ${remarks === 1 ? 'remark was' : 'remarks were'} taken in, and nothing else.`;
  },
  incomplete: (held: number, said: number) => `Not complete: ${held} entries held, the device said ${said}.`,
} as const;

import { createHash } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, truncateSync, writeSync } from 'node:fs';
import { headText, NO_HEAD_BEFORE, type SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';

/** What stands in a file of heads; `sentence` where a line is not what was signed, and then only the lines before it. */
export interface KeptHeads {
  readonly heads: readonly SignedHead[];
  readonly sentence?: string;
}

/** The hash by which the next head names this one. */
export function headHash(head: Omit<SignedHead, 'key' | 'signature'>): string {
  return createHash('sha256').update(headText(head)).digest('hex');
}

/** Whose signatures are checked. */
export type Verifier = Pick<ReceiptSigner, 'keyName' | 'verifies'>;

/**
 * Reads a file of heads, one a line in JSON, and checks how they follow each other and who signed them.
 *
 * @throws {ServerError} data-unwritable, where the file is there and cannot be read.
 */
export function readHeads(path: string, signer?: Verifier): KeptHeads {
  // What follows the last line end was torn off as it was written.
  return checkHeads(readText(path).split('\n').slice(0, -1).map(parseHead), path, signer);
}

/**
 * How heads follow each other and who signed them: another key may go before that of the signer, and only up to a head
 * that begins anew, as one does where a lost key was accepted.
 *
 * @param from what they were read from, as sentences name it
 */
export function checkHeads(read: readonly (SignedHead | undefined)[], from: string, signer?: Verifier): KeptHeads {
  const heads: SignedHead[] = [];
  for (const [at, head] of read.entries()) {
    const before = heads.at(-1);
    const previous = before === undefined ? NO_HEAD_BEFORE : headHash(before);
    if (head === undefined || head.number !== at + 1 || head.previous !== previous) {
      return { heads, sentence: `Head ${at + 1} in ${from} is not as it was signed.` };
    }
    if (before !== undefined && before.key !== head.key && !head.anew) {
      return { heads, sentence: `Head ${at + 1} in ${from} is signed by another key than the one before it.` };
    }
    if (head.key === signer?.keyName && !signer.verifies(headText(head), head.signature)) {
      return { heads, sentence: `Head ${at + 1} in ${from} does not bear the signature of this server's key.` };
    }
    heads.push(head);
  }
  return { heads };
}

/** Adds a head behind the others; on the disk when it returns. @throws {ServerError} data-unwritable. */
export function appendHead(path: string, head: SignedHead): void {
  try {
    const text = readText(path);
    // Behind a line that was torn off as it was written none could be read.
    if (text !== '' && !text.endsWith('\n'))
      truncateSync(path, Buffer.byteLength(text.slice(0, text.lastIndexOf('\n') + 1)));
    const file = openSync(path, 'a', 0o600);
    writeSync(file, `${JSON.stringify(head)}\n`);
    fsyncSync(file);
    closeSync(file);
  } catch (error) {
    throw new ServerError('data-unwritable', path, error);
  }
}

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return '';
    throw new ServerError('data-unwritable', path, error);
  }
}

/** One head as a line of JSON; undefined where it is none. */
export function parseHead(line: string): SignedHead | undefined {
  try {
    const head = JSON.parse(line) as SignedHead;
    const whole =
      [head.number, head.time].every(Number.isSafeInteger) &&
      [head.previous, head.key, head.signature].every((one) => typeof one === 'string') &&
      typeof head.anew === 'boolean' &&
      head.streams.every(
        ({ stream, seq, hash, received, forks, follows }) =>
          [typeof stream, typeof hash, typeof received, typeof follows].every((one) => one === 'string') &&
          [seq, forks].every(Number.isSafeInteger),
      );
    return whole ? head : undefined;
  } catch {
    return undefined;
  }
}

import type { Entry, StreamId } from '../../../grammar/visit/envelope.ts';
import type { Acknowledgement, Follows } from '../../../grammar/visit/record-lines.ts';
import { parseRecordLine, type RecordLine } from '../../../grammar/visit/record-lines.ts';
import { verifyChain } from '../../../grammar/visit/verify-chain.ts';
import { RecordError } from '../errors.ts';
import { sha256 } from './sha256.ts';

export interface LogContents {
  readonly expected: StreamId;
  /** As the file's first line names it; missing in a new file. */
  stream?: StreamId;
  follows?: Follows;
  readonly entries: Entry[];
  acknowledged?: Acknowledgement;
  /** Bytes of whole lines. */
  length: number;
  /** Bytes behind the last whole line. */
  torn: number;
}

export function writeLine(line: RecordLine): Uint8Array {
  return Buffer.from(`${JSON.stringify(line)}\n`, 'utf8');
}

/**
 * What a record file holds, checked from its first event on against its own chain and the kept acknowledgement.
 * Only the bytes behind the last line end may be torn; anything else out of order is damage and is never repaired.
 */
export async function readLogFile(path: string, bytes: Buffer, expected: StreamId): Promise<LogContents> {
  const length = bytes.lastIndexOf(0x0a) + 1;
  const contents: LogContents = { expected, entries: [], length, torn: bytes.length - length };
  const lines = bytes.subarray(0, length).toString('utf8').split('\n').slice(0, -1);
  for (const [at, text] of lines.entries()) takeLine(contents, path, at + 1, text);
  const verdict = await verifyChain(expected, contents.entries, sha256, contents.acknowledged);
  // A cut at a line's end leaves no torn line to see: only the kept acknowledgement shows it, and the server has the rest.
  if (!verdict.intact && verdict.reason !== 'short')
    throw new RecordError('log-damaged', `${path} (event ${verdict.seq})`);
  return contents;
}

function takeLine(contents: LogContents, path: string, number: number, text: string): void {
  const line = parseRecordLine(text);
  if (line === undefined || (line.kind === 'stream') !== (number === 1)) {
    throw new RecordError('log-damaged', `${path} (line ${number})`);
  }
  switch (line.kind) {
    case 'stream':
      if (line.version !== 1) throw new RecordError('log-newer', path);
      if (!sameStream(line.stream, contents.expected)) throw new RecordError('log-other-visit', path);
      contents.stream = line.stream;
      if (line.follows !== undefined) contents.follows = line.follows;
      return;
    case 'batch':
      contents.entries.push(...line.entries);
      return;
    case 'acknowledged': {
      const { kind: _kind, ...acknowledged } = line;
      contents.acknowledged = acknowledged;
      return;
    }
    default:
      line satisfies never;
  }
}

function sameStream(a: StreamId, b: StreamId): boolean {
  return a.company === b.company && a.visit === b.visit && a.device === b.device && a.epoch === b.epoch;
}

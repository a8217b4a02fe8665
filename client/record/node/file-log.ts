import { type FileHandle, mkdir, open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type Entry, emptyHead, type Head, type StreamId } from '../../../grammar/visit/envelope.ts';
import type { Acknowledgement, Follows } from '../../../grammar/visit/record-lines.ts';
import { RecordError } from '../errors.ts';
import { inTurn } from '../in-turn.ts';
import { laterAcknowledgement, prepareEntries, type VisitLog } from '../visit-log.ts';
import { type LogContents, readLogFile, writeLine } from './log-file.ts';
import { sha256 } from './sha256.ts';

export interface OpenedFileLog {
  readonly log: VisitLog;
  /** One sentence for the user where the file was cut short and its torn end was dropped. */
  readonly notice?: string;
}

/**
 * Opens, or begins, a record in a file of JSON lines: one line a batch, so that a batch is there whole or not at all.
 * Every append is on the disk (fdatasync) before it resolves. A torn last line is dropped and told in `notice`.
 * @throws {RecordError} log-damaged where anything before the last line does not hold; log-other-visit; log-newer;
 *   log-unwritable.
 */
export async function openFileLog(path: string, stream: StreamId, follows?: Follows): Promise<OpenedFileLog> {
  const file = await openWritable(path);
  try {
    const contents = await readLogFile(path, await file.readFile(), stream);
    if (contents.torn > 0) await file.truncate(contents.length);
    if (contents.stream === undefined) {
      const line = writeLine({ kind: 'stream', version: 1, stream, ...(follows === undefined ? {} : { follows }) });
      await writeWhole(file, line, contents.length);
      contents.length += line.length;
      await keepName(path);
    }
    await file.datasync();
    const log = new FileLog(file, path, contents, await emptyHead(stream, sha256), contents.follows ?? follows);
    return contents.torn > 0 ? { log, notice: tornNotice(path, contents) } : { log };
  } catch (error) {
    await file.close();
    throw error instanceof RecordError ? error : new RecordError('log-unwritable', path, error);
  }
}

class FileLog implements VisitLog {
  readonly stream: StreamId;
  readonly follows?: Follows;
  readonly #file: FileHandle;
  readonly #path: string;
  readonly #start: Head;
  readonly #entries: Entry[];
  readonly #run = inTurn();
  #acknowledged: Acknowledgement | undefined;
  /** Where the next line goes: the end of what is known to be on the disk. */
  #length: number;
  #open = true;

  constructor(file: FileHandle, path: string, contents: LogContents, start: Head, follows: Follows | undefined) {
    this.#file = file;
    this.#path = path;
    this.stream = contents.expected;
    this.#start = start;
    this.#entries = contents.entries;
    this.#acknowledged = contents.acknowledged;
    this.#length = contents.length;
    if (follows !== undefined) this.follows = follows;
  }

  head(): Head {
    const last = this.#entries.at(-1);
    return last === undefined ? this.#start : { seq: last.seq, hash: last.hash };
  }

  acknowledged(): Acknowledgement | undefined {
    return this.#acknowledged;
  }

  append(bodies: readonly string[]): Promise<readonly Entry[]> {
    return this.#run(async () => {
      const entries = await prepareEntries(this.head(), bodies, sha256);
      if (entries.length > 0) await this.#write(writeLine({ kind: 'batch', entries }), 'now');
      this.#entries.push(...entries);
      return entries;
    });
  }

  async read(from: number, limit = this.#entries.length): Promise<readonly Entry[]> {
    const first = Math.max(from, 1) - 1;
    return this.#entries.slice(first, first + limit);
  }

  acknowledge(came: Acknowledgement): Promise<void> {
    return this.#run(async () => {
      const later = laterAcknowledgement(this.#acknowledged, came);
      if (later === this.#acknowledged) return;
      await this.#write(writeLine({ kind: 'acknowledged', ...later }), 'soon');
      this.#acknowledged = later;
    });
  }

  close(): Promise<void> {
    return this.#run(async () => {
      if (!this.#open) return;
      this.#open = false;
      await this.#file.close();
    });
  }

  /** Writes behind the last good line; a write that failed half-way is overwritten or cut away by the next opening. */
  async #write(line: Uint8Array, durable: 'now' | 'soon'): Promise<void> {
    if (!this.#open) throw new RecordError('log-closed');
    try {
      await this.#file.truncate(this.#length);
      await writeWhole(this.#file, line, this.#length);
      if (durable === 'now') await this.#file.datasync();
      this.#length += line.length;
    } catch (error) {
      throw new RecordError('log-unwritable', this.#path, error);
    }
  }
}

/** A new file outlives a power cut only where its folder was written too; some systems do not let one ask for that. */
async function keepName(path: string): Promise<void> {
  const folder = await open(dirname(path), 'r').catch(() => undefined);
  await folder?.sync().catch(() => undefined);
  await folder?.close();
}

/** A disk that fills up may take a part of what is written without an error: the rest is written, or refused, after it. */
async function writeWhole(file: FileHandle, bytes: Uint8Array, position: number): Promise<void> {
  for (let at = 0; at < bytes.length; ) {
    const { bytesWritten } = await file.write(bytes, at, bytes.length - at, position + at);
    at += bytesWritten;
  }
}

async function openWritable(path: string): Promise<FileHandle> {
  try {
    await makeFolder(dirname(path));
    return await open(path, 'a+').then(async (made) => {
      await made.close();
      return open(path, 'r+');
    });
  } catch (error) {
    throw new RecordError('log-unwritable', path, error);
  }
}

/** Node's own "recursive" never comes back where a file system refuses new folders as missing ones (/proc). */
async function makeFolder(path: string): Promise<void> {
  const make = () =>
    mkdir(path).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  await make().catch(async (error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT' || dirname(path) === path) throw error;
    await makeFolder(dirname(path));
    await make();
  });
}

function tornNotice(path: string, contents: LogContents): string {
  const kept = contents.entries.length === 1 ? '1 event' : `${contents.entries.length} events`;
  return `The record ${path} was cut short: its last ${contents.torn} bytes were dropped, and the ${kept} before them kept.`;
}

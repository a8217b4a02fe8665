import { readFile } from 'node:fs/promises';
import { LOCAL_COMPANY, type StreamId } from '../../grammar/visit/envelope.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { openMemoryLog } from '../record/memory-log.ts';
import { openFileLog } from '../record/node/file-log.ts';
import { sha256 } from '../record/node/sha256.ts';
import type { VisitLog } from '../record/visit-log.ts';
import { TerminalError } from './terminal-error.ts';

/** The record of a visit on the terminal: in a file as a device keeps it, or as long as the program runs. */
export interface KeptVisit {
  readonly stream: StreamId;
  /** One sentence where the file was cut short. */
  readonly notice?: string;
  readonly append: (bodies: readonly string[]) => Promise<unknown>;
  /** The bodies of all events, read from the file anew. */
  readonly read: () => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
}

/** @param visit its name, where no record is there that names it */
export async function keepInMemory(visit: string): Promise<KeptVisit> {
  const log = await openMemoryLog(streamOf(visit), sha256);
  return {
    stream: log.stream,
    append: (bodies) => log.append(bodies),
    read: () => bodiesOf(log),
    close: () => log.close(),
  };
}

/**
 * @param visit its name, where the file is new
 * @throws {TerminalError} record-not-one; nothing is written to such a file
 * @throws {RecordError} what `openFileLog` throws
 */
export async function keepInFile(path: string, visit: string): Promise<KeptVisit> {
  const stream = (await streamIn(path)) ?? streamOf(visit);
  const opened = await openFileLog(path, stream);
  let { log } = opened;
  if (!beginsWithItsVisit(await bodiesOf(log))) {
    await log.close();
    throw new TerminalError('record-not-one', path);
  }
  return {
    stream,
    ...(opened.notice === undefined ? {} : { notice: opened.notice }),
    append: (bodies) => log.append(bodies),
    read: async () => {
      await log.close();
      log = (await openFileLog(path, stream)).log;
      return bodiesOf(log);
    },
    close: () => log.close(),
  };
}

function streamOf(visit: string): StreamId {
  return { company: LOCAL_COMPANY, visit, device: 'terminal', epoch: 1 };
}

async function bodiesOf(log: VisitLog): Promise<readonly string[]> {
  return (await log.read(1)).map(({ body }) => body);
}

/**
 * The stream that the first line of a file names; undefined where there is no file, or an empty one. Whatever else it
 * holds must not be opened as a record: what seems to be a torn end would be cut away.
 */
async function streamIn(path: string): Promise<StreamId | undefined> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '';
    throw new TerminalError('file-missing', path, error);
  });
  if (text === '') return undefined;
  try {
    const line = JSON.parse(text.slice(0, Math.max(0, text.indexOf('\n')))) as { kind?: string; stream?: StreamId };
    if (line.kind === 'stream' && typeof line.stream === 'object') return line.stream;
  } catch {
    // Said below, as for JSON that is something else.
  }
  throw new TerminalError('record-not-one', path);
}

/** A later epoch may hold the end of a visit alone: such a file cannot be gone on with by itself. */
function beginsWithItsVisit(bodies: readonly string[]): boolean {
  if (bodies[0] === undefined) return true;
  try {
    const [first] = bodies.map((body) => JSON.parse(body) as VisitEvent);
    return first?.type === 'input.taken' && first.input.type === 'opened.visit';
  } catch {
    return false;
  }
}

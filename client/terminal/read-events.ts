import { readFile } from 'node:fs/promises';
import type { Entry, StreamId } from '../../grammar/visit/envelope.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { readBodies, UNREADABLE } from '../../grammar/visit/read-bodies.ts';
import type { Acknowledgement } from '../../grammar/visit/record-lines.ts';
import { RecordError } from '../record/errors.ts';
import { readLogFile } from '../record/node/log-file.ts';
import { TerminalError } from './terminal-error.ts';

/** A visit as a file holds it; `chain` where it is the record of a device. Entries that cannot be read are of an unknown type. */
export interface ReadVisit {
  readonly events: readonly VisitEvent[];
  readonly chain?: ReadChain;
}

export interface ReadChain {
  readonly stream: StreamId;
  readonly entries: readonly Entry[];
  readonly acknowledged?: Acknowledgement;
}

/** The events alone; see `readVisitFile`. */
export async function readEvents(path: string): Promise<readonly VisitEvent[]> {
  return (await readVisitFile(path)).events;
}

/**
 * The events of a visit from a file: a device's record (checked against its own chain), or one event a line.
 *
 * @throws {TerminalError} record-missing, record-broken
 */
export async function readVisitFile(path: string): Promise<ReadVisit> {
  const bytes = await readFile(path).catch((error: unknown) => {
    throw new TerminalError('record-missing', path, error);
  });
  try {
    const lines = bytes
      .toString('utf8')
      .split('\n')
      .filter((line) => line.trim() !== '');
    const stream = streamOf(lines[0] ?? '');
    const log = stream === undefined ? undefined : await readLogFile(path, bytes, stream);
    const events = readBodies(log === undefined ? lines : log.entries.map(({ body }) => body));
    if (events.every(isUnreadable)) throw new Error('no events');
    if (stream === undefined || log === undefined) return { events };
    const { entries, acknowledged } = log;
    return { events, chain: { stream, entries, ...(acknowledged === undefined ? {} : { acknowledged }) } };
  } catch (error) {
    const detail = error instanceof RecordError ? error.message : path;
    throw new TerminalError('record-broken', detail, error);
  }
}

/** Whether a visit is opened in it, or was where its first entries cannot be read. */
export function opensVisit(events: readonly VisitEvent[]): boolean {
  if (events.some((event) => event.type === 'visit.opened')) return true;
  return events.slice(0, OPENING).some(isUnreadable) && events.some((event) => event.type === 'input.taken');
}

/** A visit is opened by an input and what comes of it. */
const OPENING = 2;

const isUnreadable = ({ type }: { readonly type: string }) => type === UNREADABLE;

/** The stream that the first line of a device's record names; undefined where it is none. */
function streamOf(line: string): StreamId | undefined {
  try {
    const first = JSON.parse(line) as { readonly kind?: string; readonly stream?: StreamId } | null;
    return first?.kind === 'stream' ? first.stream : undefined;
  } catch {
    return undefined;
  }
}

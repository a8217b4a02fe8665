import { readFile } from 'node:fs/promises';
import type { Head, StreamId } from '../../grammar/visit/envelope.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { RecordError } from '../record/errors.ts';
import { readLogFile } from '../record/node/log-file.ts';
import { TerminalError } from './terminal-error.ts';

/** A visit as a file holds it; `head` is where its chain ends, if it has one. */
interface ReadVisit {
  readonly events: readonly VisitEvent[];
  readonly head?: Head;
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
    const first = JSON.parse(lines[0] ?? '') as { readonly kind?: string; readonly stream?: StreamId };
    const isChained = first.kind === 'stream' && first.stream !== undefined;
    const entries = isChained ? (await readLogFile(path, bytes, first.stream as StreamId)).entries : [];
    const bodies = isChained ? entries.map((entry) => entry.body) : lines;
    const events = bodies.map((body) => JSON.parse(body) as VisitEvent);
    const last = entries.at(-1);
    if (events.length === 0 || events.some((event) => typeof event.type !== 'string')) throw new Error('no events');
    return { events, ...(last === undefined ? {} : { head: { seq: last.seq, hash: last.hash } }) };
  } catch (error) {
    const detail = error instanceof RecordError ? error.message : path;
    throw new TerminalError('record-broken', detail, error);
  }
}

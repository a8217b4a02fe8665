import { readFile } from 'node:fs/promises';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { RecordError } from '../record/errors.ts';
import { readLogFile } from '../record/node/log-file.ts';
import { TerminalError } from './terminal-error.ts';

/**
 * The events of a visit from a file: a device's record (checked against its own chain), or one event a line.
 *
 * @throws {TerminalError} record-missing, record-broken
 */
export async function readEvents(path: string): Promise<readonly VisitEvent[]> {
  const bytes = await readFile(path).catch((error: unknown) => {
    throw new TerminalError('record-missing', path, error);
  });
  try {
    const lines = bytes
      .toString('utf8')
      .split('\n')
      .filter((line) => line.trim() !== '');
    const first = JSON.parse(lines[0] ?? '') as { readonly kind?: string; readonly stream?: StreamId };
    const events =
      first.kind === 'stream' && first.stream !== undefined
        ? (await readLogFile(path, bytes, first.stream)).entries.map((entry) => JSON.parse(entry.body) as VisitEvent)
        : lines.map((line) => JSON.parse(line) as VisitEvent);
    if (events.length === 0 || events.some((event) => typeof event.type !== 'string')) throw new Error('no events');
    return events;
  } catch (error) {
    const detail = error instanceof RecordError ? error.message : path;
    throw new TerminalError('record-broken', detail, error);
  }
}

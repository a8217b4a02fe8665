import { streamText } from '../../../grammar/visit/envelope.ts';
import { type SendOptions, sendUnsent } from '../send-unsent.ts';
import { browserLogStore } from './browser-log-store.ts';
import { handInAhead, handInFiles } from './hand-in.ts';
import { listStreams, listUnsent } from './indexed-db-log.ts';
import { browserLink } from './link-edge.ts';
import { visitsBeingWritten } from './one-writer.ts';
import type { RecordDatabase } from './record-database.ts';

/** Held by the one page, or the service worker, that sends. */
export const SENDING_LOCK = 'readback-sending';
/** By which the browser wakes the service worker when there is a network. */
export const SEND_TAG = 'readback-send';

/**
 * Sends all that is unsent but what a tab is writing, which sends it itself. Resolves when that was tried.
 *
 * @param all asks the server of every stream where its copy ends, and sends what it lost since it acknowledged it
 */
export async function sendDevice(
  database: RecordDatabase,
  options: Pick<SendOptions, 'onReachable' | 'onEnd' | 'changed'>,
  all = false,
): Promise<void> {
  const written = await visitsBeingWritten();
  const unsent = await listUnsent(database);
  const names = new Set(unsent.map(({ stream }) => streamText(stream)));
  const others = all ? (await listStreams(database)).filter(({ key }) => !names.has(key)) : [];
  const streams = [...unsent, ...others].map(({ stream }) => stream).filter(({ visit }) => !written.has(visit));
  const store = browserLogStore(database);
  await sendUnsent(streams, {
    open: (stream) => store.open(stream),
    link: browserLink(),
    before: handInAhead,
    clock: Date.now,
    ...options,
  });
  await handInFiles();
}

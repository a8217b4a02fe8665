import { type SendOptions, sendUnsent } from '../send-unsent.ts';
import { browserLogStore } from './browser-log-store.ts';
import { listUnsent } from './indexed-db-log.ts';
import { browserLink } from './link-edge.ts';
import { visitsBeingWritten } from './one-writer.ts';
import type { RecordDatabase } from './record-database.ts';

/** Held by the one page, or the service worker, that sends. */
export const SENDING_LOCK = 'readback-sending';
/** By which the browser wakes the service worker when there is a network. */
export const SEND_TAG = 'readback-send';

/** Sends all that is unsent but what a tab is writing, which sends it itself. Resolves when that was tried. */
export async function sendDevice(
  database: RecordDatabase,
  options: Pick<SendOptions, 'onReachable' | 'onEnd' | 'changed'>,
): Promise<void> {
  const written = await visitsBeingWritten();
  const streams = (await listUnsent(database)).map(({ stream }) => stream).filter(({ visit }) => !written.has(visit));
  const store = browserLogStore(database);
  await sendUnsent(streams, {
    open: (stream) => store.open(stream),
    link: browserLink(),
    clock: Date.now,
    ...options,
  });
}

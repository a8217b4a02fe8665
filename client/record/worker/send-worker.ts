import { listUnsent } from '../browser/indexed-db-log.ts';
import { RecordDatabase } from '../browser/record-database.ts';
import { SEND_TAG, SENDING_LOCK, sendDevice } from '../browser/send-device.ts';

/** Background Sync (WICG): the browser's word that there is a network, while no page is open. */
interface SyncEvent extends Event {
  readonly tag: string;
  waitUntil(work: Promise<unknown>): void;
}

/** A browser lets a worker run for some minutes; what is unsent by then is tried again when it wakes it next. */
const LONGEST_MS = 60_000;
/**
 * How long a page that is just closing may still hold the sending. A page that stays open sends itself; a worker that
 * waited on for it would keep a newer version from starting.
 */
const PAGE_CLOSES_MS = 3_000;

/**
 * The part of the service worker that sends what is unsent when no page is open any more. While a page is open, it
 * sends itself, and this leaves it to it. When something stays unsent the work fails, so that the browser wakes us
 * again after growing pauses.
 */
async function sendAll(): Promise<void> {
  const database = new RecordDatabase();
  try {
    const turn = AbortSignal.timeout(PAGE_CLOSES_MS);
    await navigator.locks.request(SENDING_LOCK, { signal: turn }, () => sendWithinTime(database));
    const unsent = await listUnsent(database);
    if (unsent.length > 0) throw new Error(`${unsent.length} streams are not sent yet`);
  } finally {
    await database.close();
  }
}

function sendWithinTime(database: RecordDatabase): Promise<void> {
  return sendDevice(database, {
    onReachable: () => () => undefined,
    onEnd: (end) => {
      const timer = setTimeout(end, LONGEST_MS);
      return () => clearTimeout(timer);
    },
    changed: () => undefined,
  });
}

addEventListener('sync', (event) => {
  const { tag, waitUntil } = event as SyncEvent;
  if (tag === SEND_TAG) waitUntil.call(event, sendAll());
});

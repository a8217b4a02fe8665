import { onReachable } from '../../record/browser/link-edge.ts';
import { SEND_TAG, SENDING_LOCK } from '../../record/browser/send-device.ts';
import type { Device } from './device.ts';

/** How long until it is looked again whether a visit was left with something unsent. */
const AGAIN_MS = 30_000;
/** How long until the server is asked again whether it still holds all that it acknowledged. */
const ASK_ALL_MS = 12 * 3_600_000;

/** Visits whose sending moved are told to the page that shows them. */
export const UNSENT_CHANGED = 'readback-unsent';

/**
 * Sends what the visits of this device have unsent, whatever page is open: in one tab at a time, and again whenever the
 * network is back, the page is looked at, or half a minute has passed.
 */
export function sendInBackground(device: Device): void {
  // A phone hides a page before it closes it, and gives it no time afterwards.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void wakeForUnsent(device);
  });
  void navigator.locks.request(SENDING_LOCK, async () => {
    let askAllAt = 0;
    for (;;) {
      await wakeForUnsent(device);
      const all = performance.now() >= askAllAt;
      const sent = await device
        .sendUnsent(() => dispatchEvent(new Event(UNSENT_CHANGED)), all)
        .then(
          () => true,
          () => false,
        );
      if (all && sent) askAllAt = performance.now() + ASK_ALL_MS;
      await new Promise<void>((resolve) => {
        const timer = setTimeout(done, AGAIN_MS);
        const forget = onReachable(done);
        function done() {
          clearTimeout(timer);
          forget();
          resolve();
        }
      });
    }
  });
}

/** Background Sync (WICG), which Chromium has, and neither Firefox nor Safari (their published tables of support). */
interface SyncingRegistration extends ServiceWorkerRegistration {
  readonly sync?: { register(tag: string): Promise<void> };
}

/**
 * Where something is unsent, asks the browser to wake the service worker when there is a network, so that it is sent
 * also when no page is open any more (`record/worker/send-worker.ts`). Where the browser has no Background Sync it is
 * sent when a page is opened next.
 */
async function wakeForUnsent(device: Device): Promise<void> {
  try {
    if (!('serviceWorker' in navigator) || (await device.unsent()).length === 0) return;
    const registration: SyncingRegistration | undefined = await navigator.serviceWorker.getRegistration();
    await registration?.sync?.register(SEND_TAG);
  } catch {
    // Not allowed here: then a page sends it.
  }
}

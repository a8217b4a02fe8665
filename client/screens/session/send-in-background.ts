import { onReachable } from '../../record/browser/link-edge.ts';
import type { Device } from './device.ts';

const LOCK = 'readback-sending';
/** How long until it is looked again whether a visit was left with something unsent. */
const AGAIN_MS = 30_000;

/** Visits whose sending moved are told to the page that shows them. */
export const UNSENT_CHANGED = 'readback-unsent';

/**
 * Sends what the visits of this device have unsent, whatever page is open: in one tab at a time, and again whenever the
 * network is back, the page is looked at, or half a minute has passed.
 */
export function sendInBackground(device: Device): void {
  void navigator.locks.request(LOCK, async () => {
    for (;;) {
      await device.sendUnsent(() => dispatchEvent(new Event(UNSENT_CHANGED))).catch(() => undefined);
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

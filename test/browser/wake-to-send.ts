import type { CDPSession, Page } from 'playwright-core';

/** Lets the browser wake the service worker of this origin as Background Sync does, and does not wait for its end. */
export async function wakeToSend(page: Page, url: string): Promise<void> {
  const tools = await page.context().newCDPSession(page);
  const registrationId = await registrationOf(tools, url);
  await tools.send('ServiceWorker.dispatchSyncEvent', {
    origin: new URL(url).origin,
    registrationId,
    tag: 'readback-send',
    lastChance: false,
  });
}

/** The registration of our service worker, as Chromium's own tools name it. */
async function registrationOf(tools: CDPSession, url: string): Promise<string> {
  const found = new Promise<string>((resolve) => {
    tools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const ours = registrations.find(({ scopeURL }) => scopeURL.startsWith(url));
      if (ours !== undefined) resolve(ours.registrationId);
    });
  });
  await tools.send('ServiceWorker.enable');
  return found;
}

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';
import { wakeToSend } from './wake-to-send.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer | undefined;
let browser: ReadbackBrowser;
let page: Page;
let url: string;
let port: number;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  ({ url, port } = server);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  page = await browser.page(url);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server?.stop();
  await folder.remove();
});

async function heldWhole(): Promise<boolean> {
  const { visits } = (await (await fetch(`${url}/api/visits`)).json()) as { visits: readonly { visit: string }[] };
  const [first] = visits;
  if (first === undefined) return false;
  return (await servedRecord(url, first.visit)).events.some(({ body }) => body.includes('"visit.closed"'));
}

describe('a visit that was closed without a server', { timeout: 120_000 }, () => {
  test('is sent by the service worker when the browser wakes it, with no page open', async () => {
    const technician = new Technician(page);
    await technician.openVisit('Reading room', 'does not cool');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await server?.stop();
    server = undefined;
    await technician.type('outdoor air ninety four degrees');
    await technician.type('finish the visit');
    // A page of no program of ours: what sends from here on is no page.
    await page.goto('about:blank');
    server = await startServer(`${folder.path}/data`, port);
    expect(await heldWhole()).toBe(false);
    await wakeToSend(page, url);
    await expect.poll(heldWhole, { timeout: 60_000, interval: 250 }).toBe(true);
  });
});

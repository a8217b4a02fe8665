import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { keptForOffline, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord, standingReadings } from './served-record.ts';
import { LIBRARY_READINGS, libraryLines, Technician } from './technician.ts';
import { VersionsProxy } from './versions-proxy.ts';
import { wakeToSend } from './wake-to-send.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer | undefined;
let browser: ReadbackBrowser;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
}, 60_000);
afterEach(async () => {
  await browser.close();
  await server?.stop();
  await folder.remove();
});

const urlOf = () => server!.url;
/** Whether the page was not loaded anew since it was marked. */
const mark = (page: Page) => page.evaluate(() => Object.assign(globalThis, { sameLoad: true }));
const isSameLoad = (page: Page) => page.evaluate(() => 'sameLoad' in globalThis);
const isNewer = (page: Page) => page.evaluate(() => document.querySelector('meta[name="newer-version"]') !== null);

describe('the first load', () => {
  test('tells in megabytes how much of Readback is on the device, until all of it is', async () => {
    const page = await browser.page('about:blank');
    const tools = await page.context().newCDPSession(page);
    // Slow enough that it is seen coming; bytes a second.
    await tools.send('Network.enable');
    await tools.send('Network.emulateNetworkConditions', {
      offline: false,
      latency: 5,
      downloadThroughput: 4_000_000,
      uploadThroughput: 4_000_000,
    });
    await page.addInitScript(() => {
      const told: string[] = [];
      Object.assign(globalThis, { told });
      setInterval(() => {
        const words = document.querySelector('[data-keeping], [data-kept]')?.textContent?.trim() ?? '';
        if (words !== '' && told.at(-1) !== words) told.push(words);
      }, 50);
    });
    await page.goto(urlOf());
    await page.locator('[data-kept]').waitFor({ timeout: 90_000 });
    await picture(page, 'kept');
    const told = (await page.evaluate(() => (globalThis as unknown as { told: string[] }).told)).map((words) =>
      /([\d.]+) (?:of ([\d.]+) )?MB/.exec(words),
    );
    const kept = told.map((found) => Number(found?.[1]));
    expect(kept.length).toBeGreaterThan(2);
    expect(kept).toEqual(kept.toSorted((a, b) => a - b));
    // What is told last is what the caches hold, by their own count.
    const inCaches = await page.evaluate(async () => {
      const list = (await (await fetch('/offline-files.json')).json()) as Record<string, Record<string, number>>;
      const wanted = new Set(Object.values(list).flatMap((files) => Object.keys(files)));
      let bytes = 0;
      for (const name of await caches.keys())
        for (const request of await (await caches.open(name)).keys())
          if (wanted.has(new URL(request.url).pathname))
            bytes += (await (await caches.match(request))!.arrayBuffer()).byteLength;
      return bytes;
    });
    expect(kept.at(-1)).toBeCloseTo(inCaches / 1e6, 0);
  }, 150_000);
});

describe('without a network', () => {
  test('a whole visit runs from a start without the server to its close, and is sent when the server is back', async () => {
    const page = await browser.page(urlOf());
    await keptForOffline(page);
    const { port } = server!;
    await server!.stop();
    server = undefined;
    await page.close();
    const offline = await browser.page('about:blank');
    await offline.clock.install();
    await offline.goto(`http://127.0.0.1:${port}`);
    const technician = new Technician(offline);
    await technician.openVisit('Town library, reading room', 'does not cool');
    await mark(offline);
    for (const line of libraryLines()) {
      if ('later' in line) await offline.clock.fastForward(line.later * 60_000);
      else await technician.type(line.words);
    }
    expect(await offline.locator('[data-asked]').getAttribute('data-asked')).toBe('closed');
    expect(await isSameLoad(offline)).toBe(true);
    server = await startServer(`${folder.path}/data`, port);
    await offline.clock.fastForward(60_000);
    await technician.sent();
    const { folded, flaw } = await servedRecord(urlOf(), await onlyVisit(urlOf()));
    expect(flaw).toBeUndefined();
    expect(folded.summary).toBeDefined();
    expect(standingReadings(folded)).toEqual(LIBRARY_READINGS);
  }, 180_000);
});

describe('a newer version', () => {
  test('waits through a visit, is told of, and starts when somebody says so', async () => {
    const proxy = await VersionsProxy.start(urlOf());
    try {
      const page = await browser.page(proxy.url);
      await keptForOffline(page);
      const technician = new Technician(page);
      await technician.openAs('technician');
      await mark(page);
      proxy.update();
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
      await page.evaluate(async () => {
        const of = await navigator.serviceWorker.getRegistration();
        while (of?.waiting == null) await new Promise((resolve) => setTimeout(resolve, 100));
      });
      // The visit goes on with every part that it has, sheets too, and is told of it under More.
      await technician.type('outdoor air ninety four degrees');
      await technician.press('More');
      await page.locator('[data-newer-version]').waitFor();
      expect(await page.getByRole('button', { name: 'Start the newer version' }).count()).toBe(0);
      await picture(page, 'newer-version');
      await page.keyboard.press('Escape');
      await technician.press('More', 'Screen');
      await page.keyboard.press('Escape');
      expect(await isSameLoad(page)).toBe(true);
      // Another page of this browser offers it, and refuses while the visit runs.
      const other = await browser.page(`${proxy.url}/?visits`);
      await mark(other);
      await other.getByRole('button', { name: 'Start the newer version' }).click();
      await other.getByText('A visit runs in another page').waitFor();
      expect([await isSameLoad(other), await isSameLoad(page)]).toEqual([true, true]);
      await technician.type('finish the visit');
      await technician.type('note the customer calls again');
      await page.goto('about:blank');
      // The old service worker, woken while a page that sends is open, is no reason to wait.
      await wakeToSend(other, proxy.url);
      // The browser takes a moment to know that the page with the visit is gone.
      const start = other.getByRole('button', { name: 'Start the newer version' });
      const asks = async () => {
        await start.click({ timeout: 1_000 }).catch(() => undefined);
        return isSameLoad(other).catch(() => true);
      };
      await expect.poll(asks, { timeout: 20_000, interval: 1_000 }).toBe(false);
      expect(await isNewer(other)).toBe(true);
    } finally {
      await proxy.stop();
    }
  }, 150_000);

  test('starts by itself when every page of the old one is closed', async () => {
    const proxy = await VersionsProxy.start(urlOf());
    try {
      const page = await browser.page(proxy.url);
      await keptForOffline(page);
      proxy.update();
      await page.evaluate(async () => {
        const of = await navigator.serviceWorker.getRegistration();
        await of?.update();
        while (of?.waiting == null) await new Promise((resolve) => setTimeout(resolve, 100));
      });
      expect(await isNewer(page)).toBe(false);
      await page.goto('about:blank');
      const again = await browser.page(proxy.url);
      expect(await isNewer(again)).toBe(true);
    } finally {
      await proxy.stop();
    }
  }, 120_000);
});

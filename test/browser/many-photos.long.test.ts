import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { filesOf } from './kept-files.ts';
import { accessFaults, overflow } from './look-over.ts';
import { DESK, PHONE, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

const PHOTOS = 200;
/** The longest that the page's own memory may have grown by while all of them were taken, or opened. Our choice. */
const GROWN = 24_000_000;

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** A picture of many colours, some 200 kB as JPEG. */
async function photoOf(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(1_200, 900);
    const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
    for (let at = 0; at < 6_000; at += 1) {
      context.fillStyle = `hsl(${(at * 47) % 360} 60% ${20 + (at % 60)}%)`;
      context.fillRect((at * 613) % 1_200, (at * 389) % 900, 40, 40);
    }
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
  });
  return Buffer.from(bytes);
}

/** Bytes of the page's own objects, once what nothing uses is gone: buffers of files count too. */
async function memoryOf(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.enable');
  return async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize, backingStorageSize = 0 } = (await session.send('Runtime.getHeapUsage')) as {
      usedSize: number;
      backingStorageSize?: number;
    };
    return usedSize + backingStorageSize;
  };
}

test('200 photos are taken, sealed and sent; the review opens, shows them as they are asked for, and holds a few at once', async () => {
  const technician = new Technician(await browser.page(server.url));
  const { page } = technician;
  await technician.openVisit('Two hundred photos', 'does not cool');
  const buffer = await photoOf(page);
  expect(buffer.length).toBeGreaterThan(100_000);
  await technician.press('More', 'Photo');
  const memory = await memoryOf(page);
  const before = await memory();
  for (let taken = 1; taken <= PHOTOS; taken += 1) {
    await page.locator('input[name="wiring"]').setInputFiles({ name: 'w.jpg', mimeType: 'image/jpeg', buffer });
    await page.locator(`[data-photos="${taken}"]`).waitFor();
  }
  await expect
    .poll(async () => (await filesOf(page)).filter(({ received }) => received).length, { timeout: 120_000 })
    .toBe(PHOTOS);
  expect((await memory()) - before).toBeLessThan(GROWN);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await technician.sent();
  const visit = await onlyVisit(server.url);
  const { folded, flaw } = await servedRecord(server.url, visit);
  expect(flaw).toBeUndefined();
  expect(folded.photos).toHaveLength(PHOTOS);
  expect(new Set(folded.photos.map(({ sha256 }) => sha256)).size).toBe(PHOTOS);

  await page.setViewportSize(DESK);
  await page.goto(`${server.url}/review?visit=${visit}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  // Each opening is put on the visit's trail: none is opened by itself.
  expect(browser.requests.filter((url) => url.includes('/attachments/') && !url.includes('/devices/'))).toEqual([]);
  const keys = page.getByRole('button', { name: /^Show Photo/ });
  expect(await keys.count()).toBe(PHOTOS);
  expect(await accessFaults(page)).toEqual([]);
  const shown = page.locator('img.photo');
  const drawn = async () =>
    shown.evaluateAll((all) => all.filter((one) => (one as HTMLImageElement).naturalWidth > 0).length);
  const open = async (count: number) => {
    for (let at = 0; at < count; at += 1) {
      const line = page.locator('li[data-seq]').filter({ has: page.getByRole('button', { name: /^Show Photo/ }) });
      await line.last().scrollIntoViewIfNeeded();
      await line
        .last()
        .getByRole('button', { name: /^Show Photo/ })
        .click();
      await expect.poll(drawn).toBeGreaterThan(Math.min(at, 23) - 1);
    }
  };
  await open(12);
  await expect.poll(drawn).toBe(12);
  await picture(page, 'review-many-photos');
  const inReview = await memoryOf(page);
  const few = await inReview();
  // All the others, from the first on: what was opened before them is closed again.
  for (const line of await page.locator('li[data-seq]').all()) {
    const key = line.getByRole('button', { name: /^Show Photo/ });
    if ((await key.count()) > 0) await key.click();
  }
  await expect.poll(drawn).toBe(await shown.count());
  expect(await shown.count()).toBeLessThanOrEqual(24);
  expect(await shown.count()).toBeGreaterThan(12);
  expect((await inReview()) - few).toBeLessThan(GROWN);
  await page.setViewportSize(PHONE);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(browser.errors).toEqual([]);
}, 600_000);

import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { filesOf, handedIn } from './kept-files.ts';
import { accessFaults, overflow } from './look-over.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
});
afterEach(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** Stands for what a camera writes beside the picture: where it was taken. */
const PLACE = 'Exif\0\0 GPS 51.4779 N';

/** A JPEG as the browser draws it, with a segment behind its head as cameras write them (APP1 of Exif, JEITA CP-3451). */
async function photoOf(page: Page, width: number, height: number): Promise<Buffer> {
  const bytes = await page.evaluate(
    async ([across, down]) => {
      const canvas = new OffscreenCanvas(across, down);
      const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
      context.fillStyle = 'teal';
      context.fillRect(0, 0, across, down);
      context.fillStyle = 'white';
      context.fillRect(across / 4, down / 4, across / 2, down / 2);
      return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
    },
    [width, height] as const,
  );
  const place = Buffer.from(PLACE, 'latin1');
  const segment = Buffer.alloc(4);
  segment.writeUInt16BE(0xffe1, 0);
  segment.writeUInt16BE(place.length + 2, 2);
  const drawn = Buffer.from(bytes);
  return Buffer.concat([drawn.subarray(0, 2), segment, place, drawn.subarray(2)]);
}

test('a photo of the plate is sealed, named by the record, sent, and seen in the review; what is no picture is refused', async () => {
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  const technician = new Technician(await browser.page(server.url));
  const { page } = technician;
  await technician.openVisit('Photos', 'does not cool');
  await technician.settled();
  const taken = await photoOf(page, 4_000, 1_000);
  expect(taken.includes('GPS')).toBe(true);
  await technician.press('More', 'Photo');
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await picture(page, 'photo');
  await page.locator('input[name="wiring"]').setInputFiles({
    name: 'notes.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from('no picture at all'),
  });
  await page.getByText('This file is no picture').waitFor();
  await page.locator('input[name="plate"]').setInputFiles({ name: 'p.jpg', mimeType: 'image/jpeg', buffer: taken });
  await page.locator('[data-photos="1"]').waitFor();
  await technician.sent();
  const [file, ...more] = await handedIn(page);
  expect([file?.kind, more]).toEqual(['photo', []]);
  const visit = await onlyVisit(server.url);
  const { folded, flaw } = await servedRecord(server.url, visit);
  expect(flaw).toBeUndefined();
  expect(folded.photos).toMatchObject([{ of: 'plate', sha256: file?.sha256 }]);
  expect(folded.damaged).toEqual([]);

  const answer = await fetch(`${server.url}/api/visits/${visit}/attachments/${file?.sha256}`);
  expect(answer.headers.get('content-type')).toBe('image/jpeg');
  const kept = Buffer.from(await answer.arrayBuffer());
  expect(kept.includes('GPS')).toBe(false);

  await page.setViewportSize({ width: 1280, height: 800 });
  await page.goto(`${server.url}/review?visit=${visit}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  const line = page.locator('li', { hasText: 'Photo of the plate' });
  await line.getByRole('button', { name: 'Show' }).click();
  const image = page.locator(`img[data-photo="${file?.sha256}"]`);
  await image.waitFor();
  await page.waitForFunction(() => document.querySelector('img')?.naturalWidth !== 0);
  expect(await image.evaluate((one: HTMLImageElement) => [one.naturalWidth, one.naturalHeight])).toEqual([2_000, 500]);
  await picture(page, 'review-photo');
  expect(await filesOf(page)).toHaveLength(1);
  await browser.context.close();
}, 120_000);

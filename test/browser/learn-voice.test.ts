import { afterEach, beforeEach, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { FEWEST_READ, READ_ALOUD } from '../../client/words/talk/read-aloud-words.ts';
import { accessFaults, overflow } from './look-over.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
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

test('under More, Sound, somebody reads a few sentences aloud: it is told that they teach too little, and none is kept', async () => {
  const words = READ_ALOUD.slice(0, FEWEST_READ + 1).flatMap((one) => [one.words, 3]);
  const sound = await spokenSound(`${folder.path}/read.wav`, [22, ...words, 120]);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
  const technician = new Technician(await browser.page(server.url));
  const { page } = technician;
  await technician.openVisit('Learning', 'does not cool');
  await technician.settled();
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"], [data-ear="hearing"]').waitFor({ timeout: 60_000 });
  const before = browser.requests.length;
  await technician.press('More', 'Sound', 'Learn my voice');
  await page.locator('[data-learn="ready"]').waitFor();
  // The page of it is fetched when it is asked for, and nothing is sent.
  expect(browser.requests.slice(before).filter((url) => url.includes('learn-sheet'))).toHaveLength(1);
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await picture(page, 'learn-ready');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('[data-read-aloud="0"]').waitFor();
  await page.locator('[data-read-aloud="1"]').waitFor({ timeout: 60_000 });
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await picture(page, 'learn-reading');
  expect(await page.getByRole('button', { name: /^That is enough/ }).isDisabled()).toBe(true);
  await page.locator(`[data-read-aloud="${FEWEST_READ}"]`).waitFor({ timeout: 90_000 });
  await page.getByRole('button', { name: /^That is enough/ }).click();
  await page.locator('[data-learn="working"], [data-learn="learnt"]').waitFor();
  await page.locator('[data-learn="learnt"]').waitFor({ timeout: 90_000 });
  expect(await page.getByRole('status').textContent()).toContain('Too little was read');
  expect(await page.getByRole('button', { name: 'Throw it away' }).count()).toBe(0);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await picture(page, 'learn-too-little');
  await page.getByRole('button', { name: 'Back' }).click();
  // Nothing of it came to the visit.
  expect(await technician.heardCount()).toBe(0);
  expect(browser.errors).toEqual([]);
}, 240_000);

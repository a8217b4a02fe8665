import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { READ_ALOUD } from '../../client/words/talk/read-aloud-words.ts';
import { inAccent } from '../../fixtures/accent.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

test('a voice that says four digits otherwise reads all aloud: it is heard better, kept over a reload, and thrown away', async () => {
  const words = READ_ALOUD.flatMap((one) => [inAccent(one.words), 3]);
  const sound = await spokenSound(`${folder.path}/read.wav`, [22, ...words, 400]);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
  const technician = new Technician(await browser.page(server.url));
  const { page } = technician;
  await technician.openVisit('Learning', 'does not cool');
  await technician.settled();
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"], [data-ear="hearing"]').waitFor({ timeout: 60_000 });
  await technician.press('More', 'Sound', 'Learn my voice');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('[data-learn="working"]').waitFor({ timeout: 300_000 });
  await page.locator('[data-learn="learnt"]').waitFor({ timeout: 900_000 });
  const told = page.locator('[data-before]');
  const [before, after, of] = await Promise.all(
    ['before', 'after', 'of'].map(async (name) => Number(await told.getAttribute(`data-${name}`))),
  );
  expect(of).toBeGreaterThanOrEqual(60);
  expect(after, `${before} before, ${after} after, of ${of}`).toBeGreaterThan(before as number);
  await page.getByText('Kept on this device').waitFor();
  await picture(page, 'learn-learnt');

  // The ear of its next start is one that learnt.
  await page.reload();
  await technician.settled();
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"], [data-ear="hearing"]').waitFor({ timeout: 60_000 });
  await technician.press('More', 'Sound', 'Learn my voice');
  await page.locator('[data-kept]').waitFor();
  await page.getByRole('button', { name: 'Throw it away' }).click();
  await page.locator('[data-learn="forgotten"]').waitFor();
  expect(await page.locator('[data-kept]').count()).toBe(0);
  expect(await technician.heardCount()).toBe(0);
  expect(browser.errors).toEqual([]);
}, 1_500_000);

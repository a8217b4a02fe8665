import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { libraryLines, Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
});
afterEach(() => browser.close());
afterAll(async () => {
  await server.stop();
  await folder.remove();
});

async function openVisit(sound: string): Promise<Technician> {
  const profile = `${folder.path}/profile-${crypto.randomUUID()}`;
  browser = await ReadbackBrowser.open({ profile, sound, voice: 'spoken' });
  const technician = new Technician(await browser.page(server.url));
  await technician.openVisit('Spoken', 'does not cool');
  return technician;
}

test('where the device has no voice the offline one speaks; while it does, and a little after, only urgent words count', async () => {
  const technician = await openVisit(await spokenSound(`${folder.path}/quiet.wav`, [60]));
  const { page } = technician;
  await page.getByText('spoken', { exact: true }).waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"]').waitFor({ timeout: 30_000 });
  await technician.send('full talk');
  await page.getByText('only “stop”').waitFor();
  await picture(page, 'visit-speaking');
  // Every prompt is in a live region too.
  expect((await technician.said()).length).toBeGreaterThan(5);
  expect(await page.locator('[data-said]').getAttribute('aria-live')).toBe('polite');
  await technician.settled();
  await page.locator('[data-ear="listening"]', { hasText: /^listening$/ }).waitFor();
  expect(browser.requests.filter((url) => url.includes('/voice/flite'))).toHaveLength(1);
}, 90_000);

test('a caution is spoken to its end; one that is stopped is silent, stays on the screen, and comes back whole', async () => {
  const technician = await openVisit(await spokenSound(`${folder.path}/quiet.wav`, [60]));
  const { page } = technician;
  await page.getByText('spoken', { exact: true }).waitFor({ timeout: 30_000 });
  const caution = page.locator('[data-asked="caution"]');
  for (const line of libraryLines()) {
    if ('later' in line) throw new Error('no caution came');
    await technician.send(line.words);
    await Promise.race([technician.settled(), caution.waitFor({ timeout: 30_000 })]);
    if ((await caution.count()) > 0) break;
  }
  const live = page.getByRole('button', { name: 'Live – I have it' });
  const words = await technician.asked();
  expect(await live.isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await technician.settled();
  expect(await technician.asked()).toBe(words);
  expect(await live.isDisabled()).toBe(true);
  await technician.send('say again');
  await page.waitForFunction(
    () => [...document.querySelectorAll('button')].some((key) => /^Live/.test(key.textContent ?? '') && !key.disabled),
    undefined,
    { timeout: 60_000 },
  );
}, 150_000);

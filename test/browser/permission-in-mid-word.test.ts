import { afterEach, beforeEach, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { filesOf } from './kept-files.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, refuseMicrophone, scratch, startServer } from './readback-browser.ts';
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

/** After 0.9 seconds of it a number is begun that would be one by itself. */
const READING = 'leg one to ground one eighteen';

test('taken away in mid-word, the microphone leaves no value and no sound behind, and says so; given back, it hears again', async () => {
  const sound = await spokenSound(`${folder.path}/microphone.wav`, [8, READING, 25, READING, 60]);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
  const technician = new Technician(await browser.page(server.url));
  const { page } = technician;
  await technician.openVisit('Mid-word', 'does not cool');
  await technician.type('keep the sound');
  await technician.settled();
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="hearing"]').waitFor({ timeout: 60_000 });
  await page.waitForTimeout(900);
  await refuseMicrophone(browser.context, server.url);
  await page.locator('[data-ear="failed"]').waitFor();
  expect(await page.locator('[data-ear-fault]').textContent()).toMatch(/^The microphone is gone: /);
  await page.waitForTimeout(3_000);
  await technician.settled();
  await technician.sent();
  const visit = await onlyVisit(server.url);
  const cut = (await servedRecord(server.url, visit)).folded;
  expect(cut.readings).toEqual([]);
  expect(cut.asked).toEqual([]);
  expect(cut.heard.filter(({ ear }) => ear !== 'typed')).toEqual([]);
  const [gone, ...later] = cut.interruptions.map(({ sentence }) => sentence);
  expect(gone).toMatch(/^The microphone is gone/);
  // Chromium's stand-in for the question may give the microphone back by itself: then that is told too.
  for (const sentence of later) expect(sentence).toMatch(/Listening again\.$/);
  expect(await filesOf(page)).toEqual([]);
  await picture(page, 'permission-in-mid-word');

  // The technician goes on by typing meanwhile; the ear comes back by itself, once the page may hear again.
  await technician.type('outdoor air ninety four degrees');
  await browser.context.grantPermissions(['microphone'], { origin: server.url });
  await page.locator('[data-ear="listening"], [data-ear="hearing"]').waitFor({ timeout: 60_000 });
  await page.waitForFunction(
    () => Number(document.querySelector('main.visit')?.getAttribute('data-heard-count')) >= 3,
    undefined,
    { timeout: 90_000 },
  );
  await technician.settled();
  await technician.sent();
  const { folded } = await servedRecord(server.url, visit);
  const said = folded.heard.filter(({ ear }) => ear !== 'typed').map(({ text }) => text);
  expect(said).toEqual([READING]);
  expect(folded.heard.at(-1)?.sound).toBeDefined();
}, 240_000);

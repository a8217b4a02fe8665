import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { type MicrophoneSound, microphoneSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord, standingReadings } from './served-record.ts';
import { LIBRARY_READINGS, libraryLines, Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let sound: MicrophoneSound;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  sound = await microphoneSound(`${folder.path}/microphone.wav`, libraryLines());
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound: sound.path });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

test('the library visit spoken into the microphone reaches the server with the same readings, and is reviewed', async () => {
  const page = await browser.page('about:blank');
  await page.clock.install();
  await page.goto(server.url);
  const technician = new Technician(page);
  await technician.openVisit('Town library, reading room', 'does not cool');
  const opened = Date.now();
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"]').waitFor({ timeout: 20_000 });
  await picture(page, 'visit-listening');
  // Quarter of an hour of running passes at once, in the pause that the sound leaves for it.
  await page.waitForTimeout(opened + sound.laterAt * 1000 - Date.now());
  await technician.settled();
  await page.clock.fastForward(16 * 60_000);
  await page.waitForTimeout(opened + (sound.seconds + 3) * 1000 - Date.now());
  await technician.settled();
  await technician.sent();

  const visit = await onlyVisit(server.url);
  const { folded, flaw } = await servedRecord(server.url, visit);
  expect(flaw).toBeUndefined();
  const talk = folded.heard.map((line) => `${line.accepted ? '' : '(not accepted) '}${line.text}`).join('\n');
  expect(standingReadings(folded), talk).toEqual(LIBRARY_READINGS);
  expect(folded.summary, talk).toBeDefined();
  expect(new Set(folded.heard.map((line) => line.ear))).toEqual(new Set(['offline']));

  await page.goto(`${server.url}/review?visit=${visit}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  expect(await page.locator('tr[data-reading]').count()).toBe(LIBRARY_READINGS.length);
  await picture(page, 'review-spoken-visit');
}, 420_000);

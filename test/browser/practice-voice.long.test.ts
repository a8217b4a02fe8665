import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { spokenSound } from './microphone-sound.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';

/** What is said, and how many seconds are left for the meter's answer. */
const SAID = [
  // The number is the meter's: what is said of it is replaced.
  'outdoor air ninety degrees',
  'return air eighty degrees',
  'thermostat is calling',
  'outdoor fan is turning',
  'compressor is running',
  'three',
  'leg one to ground one eighteen',
  'three',
  'live',
  'what next',
  'finish the visit',
];
const LEAD_SECONDS = 9;
const GAP_SECONDS = 6;

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  const parts = SAID.flatMap((words) => [words, GAP_SECONDS]);
  const sound = await spokenSound(`${folder.path}/said.wav`, [LEAD_SECONDS, ...parts, 120], 0.001);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
}, 120_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

test('an exercise by voice alone, from the door to its debrief', async () => {
  const page = await browser.page(`${server.url}/practice?exercise=motors-411`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('main.practice[data-stage="running"]').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Listen' }).click();
  await page.locator('main.practice[data-stage="debrief"]').waitFor({ timeout: 240_000 });
  const talk = (await page.locator('[data-run="you"] ol').last().textContent()) ?? '';
  const counts = await page.locator('[data-count="tests"] td').allTextContents();
  expect(Number(counts[0]), talk).toBe(2);
  // What the fan does is seen, whatever was said of it.
  expect(await page.locator('[data-run="you"]').textContent()).toMatch(/outdoor fan hums/);
  expect(await page.locator('[data-run="you"]').textContent()).toMatch(/leg one to ground/);
}, 420_000);

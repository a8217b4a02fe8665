import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, overflow } from './look-over.ts';
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
afterEach(() => browser.close());
afterAll(async () => {
  await server.stop();
  await folder.remove();
});

interface Found {
  readonly faults: readonly string[];
  readonly figures: string;
  readonly technician: Technician;
}

/** Switches the ear on, runs the check that is offered before the first reading, and reads what it found. */
async function check(sound: string, voice: 'spoken' | 'silent' = 'silent'): Promise<Found> {
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile-${crypto.randomUUID()}`, sound, voice });
  const technician = new Technician(await browser.page(server.url));
  const { page } = technician;
  await technician.openVisit('Sound check', 'does not cool');
  if (voice === 'spoken') await page.getByText('spoken', { exact: true }).waitFor({ timeout: 30_000 });
  await technician.settled();
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"], [data-ear="hearing"]').waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: /^Sound check/ }).click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('[data-check="number"]').waitFor({ timeout: 20_000 });
  await picture(page, 'sound-check-number');
  await page.locator('[data-check="done"]').waitFor({ timeout: 30_000 });
  const faults = await page
    .locator('[data-place-fault]')
    .evaluateAll((items) => items.map((item) => item.getAttribute('data-place-fault') ?? ''));
  return { faults, figures: (await page.locator('.check-figures').textContent()) ?? '', technician };
}

test('in a quiet place the number is heard, the levels are told, and nothing of it reaches the visit', async () => {
  const sound = await spokenSound(`${folder.path}/good.wav`, [14, 'two forty five', 5, 'two forty five', 40]);
  const { faults, figures, technician } = await check(sound);
  expect(faults).toEqual([]);
  expect(figures).toMatch(/the place−\d+ dBFS.*your voice−\d+ dBFS, \d+ dB over it/);
  const { page } = technician;
  await picture(page, 'sound-check-done');
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await page.getByRole('button', { name: 'Back' }).click();
  expect(await technician.heardCount()).toBe(0);
}, 90_000);

test('where others talk it says so, and what to do', async () => {
  const talk = 'the weather is going to change tomorrow and we should look at the garden before it does';
  const sound = await spokenSound(`${folder.path}/talk.wav`, Array.from({ length: 12 }, () => [talk, 0.4]).flat());
  const { faults, technician } = await check(sound);
  expect(faults).toContain('others-talk');
  await picture(technician.page, 'sound-check-others');
  expect(await technician.page.locator('[data-place-fault="others-talk"]').textContent()).toMatch(/hold a key to talk/);
}, 90_000);

test('where it is loud and nothing is said it says both', async () => {
  const { faults } = await check(await spokenSound(`${folder.path}/loud.wav`, [60], 0.2));
  expect(faults).toEqual(['unheard', 'loud']);
}, 90_000);

test('a knock or one short word in the quiet is nobody’s talk', async () => {
  const parts = Array.from({ length: 12 }, () => ['no', 3.2]).flat();
  const { faults } = await check(await spokenSound(`${folder.path}/word.wav`, parts));
  expect(faults).not.toContain('others-talk');
}, 90_000);

test('the device’s own voice is measured while it speaks', async () => {
  const sound = await spokenSound(`${folder.path}/quiet.wav`, [60]);
  const { figures, faults } = await check(sound, 'spoken');
  // The test's microphone cannot hear the speaker: no more than the place itself.
  expect(figures).toMatch(/this device’s voice−\d+ dBFS, 0 dB over it/);
  expect(faults).not.toContain('echo');
}, 90_000);

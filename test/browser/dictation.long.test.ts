import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readWav } from '../../client/listening/wav.ts';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { filesOf, handedIn } from './kept-files.ts';
import { accessFaults, overflow } from './look-over.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, SMALL_PHONE, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
});
afterEach(async () => {
  await server.stop();
  await folder.remove();
});

const FREE_SPEECH = 'the metal cover by the garden gate has been missing since spring';
const WAIT = 3;

/** Agreed or not, then a note behind its heading. */
async function spokenVisit(agreed: 'yes' | 'no') {
  const parts = [7, 'customer agrees', WAIT, agreed, WAIT, 'make a note', WAIT, FREE_SPEECH, 60];
  const sound = await spokenSound(`${folder.path}/microphone.wav`, parts);
  const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound, size: SMALL_PHONE });
  const page = await browser.page(server.url);
  const technician = new Technician(page);
  await technician.openAs('technician');
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"]').waitFor({ timeout: 30_000 });
  return { browser, page, technician };
}

const heard = (page: Page, count: number) =>
  page.waitForFunction(
    (least) => Number(document.querySelector('main.visit')?.getAttribute('data-heard-count')) >= least,
    count,
    { timeout: 60_000 },
  );

test('a note by voice is kept as sound under its hash, played, and written over; the review tells it', async () => {
  const { browser, page, technician } = await spokenVisit('yes');
  await heard(page, 4);
  await technician.settled();
  await technician.sent();
  const visit = await onlyVisit(server.url);
  const { folded } = await servedRecord(server.url, visit);
  const talk = folded.heard.map(({ text, accepted }) => `${accepted ? '' : '(not accepted) '}${text}`).join('\n');
  expect(
    folded.items.map(({ item }) => item),
    talk,
  ).toEqual(['consent-given', 'sound-kept']);
  expect(folded.notes, talk).toHaveLength(1);
  const [note] = folded.notes;
  expect(note, talk).toMatchObject({ guessed: true, sound: { sha256: expect.stringMatching(/^[0-9a-f]{64}$/) } });

  await handedIn(page);
  const answer = await fetch(`${server.url}/api/visits/${visit}/attachments/${note?.sound?.sha256}`);
  const file = new Uint8Array(await answer.arrayBuffer());
  const samples = readWav(file, 'kept.wav');
  expect(samples.length / 16).toBeCloseTo(note?.sound?.ms ?? 0, -1);
  expect(samples.length / 16_000).toBeGreaterThan(2);
  expect(Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length)).toBeGreaterThan(0.005);

  await technician.press('More', 'What was dictated');
  await page.locator('[data-sound]').first().waitFor();
  expect(await accessFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await picture(page, 'dictated');
  await page.getByLabel('Write it over: Note').fill('Cover by the garden gate is missing');
  await page.getByRole('button', { name: 'Write it over' }).click();
  await technician.sent();
  const after = (await servedRecord(server.url, visit)).folded;
  expect(after.notes).toMatchObject([
    { text: 'Cover by the garden gate is missing', heard: note?.text, sound: note?.sound },
  ]);
  expect(after.notes[0]).not.toHaveProperty('guessed');

  await page.goto(`${server.url}/review?visit=${visit}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  const line = page.locator('li', { hasText: 'Note: Cover by the garden gate is missing' });
  expect(await line.textContent()).toContain('written over');
  await line.locator('[data-sound]').waitFor();
  await picture(page, 'review-dictated');
  expect(browser.errors).toEqual([]);
  await browser.close();
}, 240_000);

test('without the agreement no sound is kept anywhere, and the words stand as a guess', async () => {
  const { browser, page, technician } = await spokenVisit('no');
  await heard(page, 4);
  await technician.settled();
  await technician.sent();
  const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
  expect(folded.items.map(({ item }) => item)).toEqual(['consent-given', 'sound-not-kept']);
  expect(await filesOf(page)).toEqual([]);
  for (const note of folded.notes) {
    expect(note.guessed).toBe(true);
    expect(note.sound).toBeUndefined();
  }
  await browser.close();
}, 240_000);

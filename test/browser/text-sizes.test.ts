import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import {
  brokenWords,
  cutOff,
  keysBelowTheFold,
  largerThanTheTwo,
  outOfSight,
  overflow,
  overlaps,
  pastTheEdge,
  show,
  TWICE,
  tooSmallForGloves,
} from './look-over.ts';
import { PHONE, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

/** Phones upright from the narrowest to the widest, and across. */
const SIZES = [
  { width: 320, height: 568 },
  { width: 320, height: 640 },
  PHONE,
  { width: 430, height: 932 },
  { width: 844, height: 390 },
  // A desk, and the same one at twice its size: WCAG 2.2, 1.4.4 and 1.4.10.
  { width: 640, height: 400 },
  { width: 1280, height: 800 },
] as const;

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let page: Page;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  page = await browser.page(server.url);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** @param inSight sizes of text of which step and value must be in sight as well: a long caution alone may fill a phone */
async function faults(
  state: string,
  inSight: readonly string[] = ['normal', 'largest', TWICE],
): Promise<readonly string[]> {
  const found: string[] = [];
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const text of ['normal', 'largest', TWICE]) {
      await show(page, 'light', text);
      const note = (what: string, ones: readonly string[]) =>
        found.push(...ones.map((one) => `${state} ${size.width}×${size.height} ${text}: ${what}: ${one}`));
      const wide = await overflow(page);
      note('sticks out', wide > 0 ? [`${wide}`] : []);
      note('cut', await cutOff(page));
      note('overlaps', await overlaps(page));
      note('as large as the step', await largerThanTheTwo(page));
      note('broken', await brokenWords(page));
      note('past the edge', await pastTheEdge(page));
      if (inSight.includes(text)) note('out of sight', await outOfSight(page));
      note('too small', await tooSmallForGloves(page));
    }
  }
  await page.setViewportSize(PHONE);
  await show(page, 'light', 'normal');
  return found;
}

test('at every size of text the step and its value are in sight, and nothing is cut, broken or laid over', async () => {
  const technician = new Technician(page);
  await technician.openAs('technician');
  const found = [...(await faults('opened'))];
  await technician.type('customer agrees');
  await technician.type('plate is unreadable');
  found.push(...(await faults('standing rules')));
  // On a phone held upright all that is there is in sight, though the rules are long.
  const box = async (what: string) => (await page.locator(what).boundingBox()) ?? { y: 0, height: 0 };
  const [heard, line] = [await box('.heard dl'), await box('.type-line')];
  expect(heard.y + heard.height).toBeLessThanOrEqual(line.y);
  await technician.type('meter is cat three');
  await technician.type('outdoor air ninety four degrees');
  found.push(...(await faults('a step and what was heard')));
  // What was typed is in sight, and so are the step, its value and the energy of each zone, at the smallest and across.
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await technician.type('say again');
    const energy = await box('.energy-band');
    expect([size, await outOfSight(page), energy.y + energy.height < size.height]).toEqual([size, [], true]);
  }
  expect(found).toEqual([]);
}, 180_000);

test('of a question its keys are in sight on the smallest phones, of a caution behind a warning its words and its value', async () => {
  const technician = new Technician(page);
  await page.goto(`${server.url}/?visits`);
  await technician.openAs('technician');
  await technician.type('leg one to ground one eighteen');
  await technician.type('leg one to leg two fifteen');
  expect(await page.locator('.asked-question').count()).toBe(1);
  const found = [...(await faults('a question'))];
  const keys = page.getByRole('button', { name: /^(Live – I have it|Yes, it shows that|No)$/ });
  expect(await keys.count()).toBe(3);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    expect([size, await keysBelowTheFold(page)]).toEqual([size, []]);
    // The last of the three lines stands whole above the line to type on.
    const [said, line] = [page.locator('.heard dl > div:not(.reader-only)').last(), page.locator('.type-line')];
    if (size.width >= 390 && size.height >= 800) {
      const [saidBox, lineBox] = [await said.boundingBox(), await line.boundingBox()];
      expect([size, saidBox!.y + saidBox!.height <= lineBox!.y + 1]).toEqual([size, true]);
    }
  }
  await technician.type('one five');
  await technician.type('outdoor disconnect is pulled and locked');
  await technician.type('leg one to ground one eighteen');
  expect(await page.locator('.warned').textContent()).toMatch(/^Hands off/);
  expect(await page.locator('.asked-caution .longest').count()).toBe(1);
  found.push(...(await faults('a caution behind a warning', ['normal'])));
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const box = (await page.locator('.asked-words').boundingBox()) ?? { y: -1, height: 0 };
    expect([size, box.y >= 0, box.y + box.height <= size.height]).toEqual([size, true, true]);
  }
  expect(found).toEqual([]);
}, 240_000);

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import {
  brokenWords,
  cutOff,
  largerThanTheTwo,
  outOfSight,
  overflow,
  overlaps,
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

async function faults(state: string): Promise<readonly string[]> {
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
      note('out of sight', await outOfSight(page));
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

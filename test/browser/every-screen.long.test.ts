import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { LIGHTS, TEXT_SIZES } from '../../client/screens/session/screen-settings.ts';
import {
  accessFaults,
  brokenWords,
  cutOff,
  largerThanTheTwo,
  outOfSight,
  overflow,
  overlaps,
  pastTheEdge,
  redWithoutDanger,
  show,
  TWICE,
  tooSmallForGloves,
} from './look-over.ts';
import { cutLabels, cutTexts, overlappingLabels, strayDanger } from './look-over-review.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { putVisit, RECORDED, recordedBodies } from './put-visit.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { libraryLines, Technician } from './technician.ts';

/** Every screen in its states, at the sizes of phones upright and across, and of a desk. */
const SIZES = [
  { width: 320, height: 568 },
  { width: 360, height: 740 },
  { width: 390, height: 844 },
  { width: 430, height: 932 },
  { width: 844, height: 390 },
  { width: 640, height: 400 },
  { width: 1280, height: 800 },
] as const;
const FOLDER = join(PROJECT_ROOT, 'test-results/screens');

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let page: Page;
let technician: Technician;

beforeAll(async () => {
  await mkdir(FOLDER, { recursive: true });
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: SIZES[2] });
  page = await browser.page(server.url);
  technician = new Technician(page);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** Screens of the review, whose charts have colours of their own. */
const REVIEWED = /^(review|printed)/;

/** What is wrong with the screen as it stands, at each size, in each light and with each size of text. */
async function lookOver(name: string): Promise<readonly string[]> {
  const faults: string[] = [];
  const note = (where: string, found: readonly string[]) => faults.push(...found.map((one) => `${where}: ${one}`));
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const text of [...TEXT_SIZES, TWICE]) {
      // The review's drawings are read at a desk, where the browser enlarges them whole.
      if (text === TWICE && REVIEWED.test(name)) continue;
      await show(page, 'light', text);
      const where = `${name} ${size.width}×${size.height} ${text}`;
      const wide = await overflow(page);
      if (wide > 0) faults.push(`${where}: sticks out by ${wide}`);
      note(
        where,
        (await cutOff(page)).map((one) => `cut off: ${one}`),
      );
      note(
        where,
        (await overlaps(page)).map((one) => `overlaps: ${one}`),
      );
      note(
        where,
        (await largerThanTheTwo(page)).map((one) => `as large as the step: ${one}`),
      );
      note(
        where,
        (await brokenWords(page)).map((one) => `broken: ${one}`),
      );
      note(
        where,
        (await outOfSight(page)).map((one) => `out of sight: ${one}`),
      );
      note(
        where,
        (await pastTheEdge(page)).map((one) => `past the edge: ${one}`),
      );
      note(
        where,
        (await tooSmallForGloves(page)).map((one) => `too small: ${one}`),
      );
      if (text === 'normal') await page.screenshot({ path: join(FOLDER, `${name}-${size.width}x${size.height}.png`) });
    }
  }
  await page.setViewportSize(SIZES[2]);
  for (const light of LIGHTS) {
    await show(page, light, 'normal');
    note(`${name} ${light}`, await accessFaults(page));
    if (!REVIEWED.test(name))
      note(
        `${name} ${light}`,
        (await redWithoutDanger(page)).map((one) => `red: ${one}`),
      );
    await page.screenshot({ path: join(FOLDER, `${name}-${light}.png`) });
  }
  await show(page, 'light', 'normal');
  return faults;
}

/** The sheets under "More" that are open to everybody, by the key that opens them. */
const SHEETS = ['A reading', 'Something seen', 'Power switched', 'Prove it dead', 'Part fitted or work done'];
const OTHER_SHEETS = ['Recommend, sign', 'What was dictated', 'Sound', 'Sound check', 'What can be said', 'Screen'];

describe("the technician's page", () => {
  test('before a visit', async () => {
    expect(await lookOver('start')).toEqual([]);
  }, 120_000);

  test('from the first step to the close', async () => {
    await technician.openAs('technician');
    const faults = [...(await lookOver('opened'))];
    let count = 0;
    for (const line of libraryLines()) {
      if ('later' in line) continue;
      await technician.type(line.words);
      // Every third: the states of the talk come again and again.
      if (count++ % 3 === 0) faults.push(...(await lookOver(`visit-${line.id}`)));
    }
    faults.push(...(await lookOver('closed')));
    await technician.sent();
    expect(faults).toEqual([]);
  }, 900_000);

  test('under "More", sheet by sheet', async () => {
    await page.goto(server.url);
    await technician.openAs('technician');
    await technician.press('customer agreed to the work', 'More');
    const faults = [...(await lookOver('more'))];
    await page.keyboard.press('Escape');
    for (const name of [...SHEETS, ...OTHER_SHEETS]) {
      await technician.press('More', name);
      faults.push(...(await lookOver(`sheet-${name.replaceAll(/\W+/g, '-').toLowerCase()}`)));
      await page.keyboard.press('Escape');
    }
    expect(faults).toEqual([]);
  }, 900_000);
});

/** The same, and what only drawings can have wrong with them. */
async function lookOverDrawn(name: string): Promise<readonly string[]> {
  const faults = [...(await lookOver(name))];
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await page.waitForTimeout(100);
    const found = [
      ...(await overlappingLabels(page)).map((one) => `labels overlap: ${one}`),
      ...(await cutLabels(page)).map((one) => `label cut: ${one}`),
      ...(await cutTexts(page)).map((one) => `text cut: ${one}`),
      ...(await strayDanger(page)).map((one) => `looks like danger: ${one}`),
    ];
    faults.push(...found.map((one) => `${name} ${size.width}×${size.height}: ${one}`));
  }
  return faults;
}

describe('review', () => {
  test('its list, a visit, its keys, the printed record and all visits together', async () => {
    const faults: string[] = [];
    for (const name of RECORDED) await putVisit(server.url, name, recordedBodies(name));
    await page.goto(`${server.url}/review`);
    await page.locator('a.visit-card').first().waitFor();
    faults.push(...(await lookOverDrawn('review-list')));
    await page.getByText('Filters', { exact: true }).click();
    faults.push(...(await lookOverDrawn('review-filters')));
    await page.getByRole('searchbox').fill('no such words anywhere');
    await page.getByText('No visit fits').waitFor();
    faults.push(...(await lookOverDrawn('review-nothing')));
    const visit = `${server.url}/review?visit=library`;
    await page.goto(visit);
    await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
    faults.push(...(await lookOverDrawn('review-visit')));
    await page.evaluate(() => {
      location.hash = '#t=30';
    });
    faults.push(...(await lookOverDrawn('review-middle')));
    await page.getByText('Write a remark').click();
    await page.getByText('Beside another visit to this unit').click();
    faults.push(...(await lookOverDrawn('review-remark')));
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Keys of this page' }).click();
    faults.push(...(await lookOverDrawn('review-keys')));
    await page.goto(`${visit}&print`);
    await page.locator('main.printed[data-printed]').waitFor();
    faults.push(...(await lookOver('printed')));
    await page.goto(`${server.url}/fleet`);
    await page.locator('.bar-chart').first().waitFor();
    faults.push(...(await lookOverDrawn('fleet')));
    expect(faults).toEqual([]);
  }, 900_000);
});

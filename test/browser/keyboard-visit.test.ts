import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, largerThanTheTwo, overflow, redWithoutDanger, smallestKey } from './look-over.ts';
import { DESK, PHONE, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord, standingReadings } from './served-record.ts';
import { LIBRARY_READINGS, libraryLines, Technician } from './technician.ts';

/** Screens to look at on the way: after the line with this id. */
const PICTURES: Readonly<Record<string, string>> = {
  '02-return-air': 'visit-look',
  '05-compressor': 'visit-caution',
  '10-leg-two': 'visit-live-step',
  '22-bare': 'visit-question',
  '35-compressor-amps': 'visit-digits',
  '40-finish': 'visit-closed',
};

describe('the library visit by keyboard alone', () => {
  let folder: Awaited<ReturnType<typeof scratch>>;
  let server: LocalServer;
  let browser: ReadbackBrowser;

  beforeAll(async () => {
    folder = await scratch();
    server = await startServer(`${folder.path}/data`);
    browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
    await folder.remove();
  });

  test('comes to its close, fits the screen, can be read by everyone, and is at the server whole', async () => {
    const page = await browser.page('about:blank');
    await page.clock.install();
    await page.goto(server.url);
    await picture(page, 'start');
    expect(await accessFaults(page)).toEqual([]);
    const technician = new Technician(page);
    await technician.openVisit('Town library, reading room', 'does not cool');
    for (const line of libraryLines()) {
      if ('later' in line) {
        await page.clock.fastForward(line.later * 60_000);
        continue;
      }
      await technician.type(line.words);
      const name = PICTURES[line.id];
      if (name === undefined) continue;
      if (name === 'visit-caution')
        expect(await page.locator('[data-asked]').getAttribute('data-asked')).toBe('caution');
      await picture(page, name);
      expect.soft(await accessFaults(page), name).toEqual([]);
      for (const size of [DESK, PHONE]) {
        await page.setViewportSize(size);
        expect.soft(await overflow(page), `${name} at ${size.width}`).toBeLessThanOrEqual(0);
      }
    }
    await technician.sent();
    expect(await page.locator('[data-asked]').getAttribute('data-asked')).toBe('closed');
    const { folded, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(folded.summary).toBeDefined();
    expect(standingReadings(folded)).toEqual(LIBRARY_READINGS);
    expect(folded.refused.map(({ reading }) => reading.quantity)).toContain('resistance');
  }, 120_000);

  test('asks nothing of any other address, and breaks no rule of its own policy', () => {
    expect(browser.requests.length).toBeGreaterThan(5);
    expect(browser.requests.filter((url) => new URL(url).host !== new URL(server.url).host)).toEqual([]);
    expect(browser.errors).toEqual([]);
  });

  test('is listed for review, and replayed to the same readings', async () => {
    const page = await browser.page(`${server.url}/review`);
    await page.locator('.visit-card').first().waitFor();
    await picture(page, 'review-list');
    expect(await accessFaults(page)).toEqual([]);
    // Past the search and its filters.
    const isAtVisit = () => page.evaluate(() => document.activeElement?.matches('.visit-card') === true);
    for (let tabs = 0; tabs < 40 && !(await isAtVisit()); tabs += 1) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
    await picture(page, 'review-end');
    expect(await accessFaults(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(await page.locator('tr[data-reading]').count()).toBe(folded.readings.length);
    await page.close();
  });

  test('gives a glove keys of 20 mm at arm’s length', async () => {
    const page = await browser.page(`${server.url}/?visits`);
    const technician = new Technician(page);
    await technician.openVisit('Second site', 'warm upstairs');
    // 6.05 CSS pixels a millimetre: 390 of them across 64.5 mm of glass.
    expect((await smallestKey(page)).width).toBeGreaterThanOrEqual(121);
    expect((await smallestKey(page)).height).toBeGreaterThanOrEqual(121);
    const value = page.locator('.live-number');
    await technician.type('outdoor air ninety four degrees');
    expect(
      Number.parseFloat(await value.evaluate((element) => getComputedStyle(element).fontSize)),
    ).toBeGreaterThanOrEqual(72);
  });

  test('the looking over would notice: grey on white, a key without a name', async () => {
    const page = await browser.page('about:blank');
    await page.setContent(
      '<html lang="en"><title>t</title><main><p style="color:#666">grey</p><button></button></main>',
    );
    const faults = (await accessFaults(page)).map((fault) => fault.split(':')[0]);
    expect(faults).toEqual(expect.arrayContaining(['color-contrast-enhanced', 'button-name']));
    await page.close();
  });

  test('and: red that is no danger, words as large as the step', async () => {
    const page = await browser.page('about:blank');
    await page.setContent(
      `<main class="visit"><p class="asked-words" style="font-size:20px">step</p><p style="font-size:20px">beside</p>
      <p class="warned" style="color:#7a1f0a">hands off</p><p style="color:#7a1f0a">red</p>
      <button class="key warm" style="background:#7a1f0a">Send</button></main>`,
    );
    expect((await largerThanTheTwo(page)).join()).toContain('beside');
    const red = (await redWithoutDanger(page)).join();
    expect(red).toContain('red');
    expect(red).toContain('Send');
    expect(red).not.toContain('hands off');
    await page.close();
  });
});

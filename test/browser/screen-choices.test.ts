import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { POINTS } from '../../grammar/vocabulary/points.ts';
import { accessFaults } from './look-over.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord, standingReadings } from './served-record.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let page: Page;
let technician: Technician;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  page = await browser.page(server.url);
  technician = new Technician(page);
});
afterEach(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

const nameOf = (point: string) => POINTS.find(({ id }) => id === point)!.name;
const unitShown = () => page.locator('.live-unit').textContent();

describe('units chosen under Screen', () => {
  test('change what is shown, what a number means and what is told, and leave what was read', async () => {
    await technician.openAs('technician');
    await technician.press('customer agreed to the work', 'that line cannot be read', 'meter is category three');
    expect(await unitShown()).toBe('°F');
    await technician.type('outdoor air ninety four');
    await technician.press('More', 'Screen', '°C', 'kPa');
    await picture(page, 'units');
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await unitShown()).toBe('°C');
    expect(await technician.said()).toContain('degrees Celsius and kilopascals');
    await technician.type('twenty seven');
    await technician.type('suction pressure eight hundred twenty');
    // The pad begins with the chosen unit, and the record keeps each reading with its own.
    await technician.press('More', 'A reading', 'pressure', nameOf('liquid-port'), '2', '4', '0', '0', 'Enter');
    await technician.sent();
    const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(standingReadings(folded)).toEqual([
      'outdoor-air 94 [degF]',
      'return-air 27 Cel',
      'suction-port 820 kPa',
      'liquid-port 2400 kPa',
    ]);
    await page.reload();
    await technician.settled();
    await technician.type('liquid line thirty eight');
    expect(await page.locator('[data-understood]').textContent()).toContain('38 °C');
  }, 90_000);

  test('hold for the next visit of this device from its first event on', async () => {
    await technician.openAs('technician');
    await technician.press('More', 'Screen', '°C');
    await page.goto(`${server.url}/?visits`);
    await technician.openAs('technician');
    await technician.type('outdoor air thirty four');
    expect(await page.locator('[data-understood]').textContent()).toContain('34 °C');
  }, 60_000);
});

describe('a unit that was at a site before', () => {
  test('is offered by its plate, and taken only where somebody says that it is still this one', async () => {
    await technician.openUnknown();
    await technician.type('serial a b c one two three');
    await technician.type('nameplate supply volts two forty');
    await technician.sent();
    await page.goto(`${server.url}/?visits`);
    expect(await page.locator('[data-known-units]').count()).toBe(0);
    await page.getByLabel('Site').fill('reading ROOM');
    await page.locator('[data-known-units="1"]').waitFor();
    expect(await page.getByRole('radio', { name: /another, or not looked at/ }).isChecked()).toBe(true);
    await picture(page, 'known-unit');
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('radio', { name: /I looked: still this plate\. serial ABC123, 240 V/ }).check();
    await page.getByLabel('Complaint').fill('warm again');
    await page.getByRole('button', { name: 'Open the visit' }).click();
    await technician.settled();
    await technician.sent();
    const { visits } = (await (await fetch(`${server.url}/api/visits`)).json()) as {
      visits: readonly { visit: string }[];
    };
    const records = await Promise.all(visits.map(({ visit }) => servedRecord(server.url, visit)));
    const again = records.find(({ folded }) => folded.complaint === 'warm again');
    expect(again?.folded.unit).toMatchObject({ serial: 'ABC123', supply: { nominal: 240 } });
  }, 60_000);
});

describe('what can be said', () => {
  test('is listed with what is asked first, and found by its words, with the keyboard alone', async () => {
    await technician.openAs('technician');
    await technician.press('More', 'What can be said');
    const sheet = page.getByRole('dialog', { name: 'What can be said' });
    expect(await sheet.getByRole('heading').first().textContent()).toBe('Asked now');
    expect(await sheet.getByRole('listitem').count()).toBeGreaterThan(200);
    await page.getByLabel('Find, by any of its words').focus();
    await page.keyboard.type('suct press');
    expect(await sheet.getByRole('listitem').allTextContents()).toContain('suction pressure …');
    expect(await sheet.getByRole('listitem').count()).toBeLessThan(20);
    await picture(page, 'phrases');
    expect(await accessFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
  }, 60_000);
});

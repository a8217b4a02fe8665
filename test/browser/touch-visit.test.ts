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

/** Enters numbers on the pad, one after another. */
async function enter(...numbers: readonly string[]): Promise<void> {
  for (const number of numbers) await technician.press(...number, 'Enter');
}

/** What is read where a number is asked for: anything that can be, the visit is to be gone through and not to be found out. */
const NUMBERS: Readonly<Record<string, string>> = { V: '240', A: '5', '°F': '70', µF: '5', Ω: '1', psig: '120' };
/** The keys that lead on, the likeliest first; where there is none of them the first key that is no way out. */
const LEADS_ON = [
  'Live – I have it',
  'I have it',
  'Enter it',
  'Repair is done',
  'covers are on',
  'What next',
  'Customer not present',
];

/** Answers with the keys of the moment, until the visit is closed or `most` were pressed. */
async function pressOn(most: number): Promise<readonly string[]> {
  const pressed: string[] = [];
  // Keys that open a form which is not filled here.
  const left = new Set(['More', 'Pass', 'Stop']);
  while (pressed.length < most && (await page.locator('[data-asked="closed"]').count()) === 0) {
    const keys = (await page.locator('.visit-keys .key:enabled').allTextContents()).filter((one) => !left.has(one));
    const key = LEADS_ON.find((one) => keys.includes(one)) ?? keys[0];
    pressed.push(key ?? 'Pass');
    await technician.press(...(key === undefined ? ['More', 'Pass on this'] : [key]));
    if ((await page.locator('.pad').count()) > 0) {
      const unit = (await page.locator('.pad-unit').textContent()) ?? '';
      await enter(NUMBERS[unit] ?? '1');
    } else if ((await page.getByLabel('Signed by the technician').count()) > 0) {
      await page.getByLabel('Signed by the technician').fill('Robin Vale');
      await page.getByLabel('Signed by the customer').fill('Alex Moor');
      await technician.press('Record it');
    } else if ((await page.locator('dialog[open]').count()) > 0) {
      left.add(key ?? '');
      await page.locator('dialog[open]').getByRole('button', { name: 'Back', exact: true }).click();
    }
    if (pressed.length % 15 === 0) await technician.press('More', 'Finish the visit');
  }
  return pressed;
}

const nameOf = (point: string) => POINTS.find(({ id }) => id === point)?.name ?? point;

describe('a visit by touch alone', () => {
  test('from arrival to a part that is fitted: pads, looks, reports, a proof, a picker', async () => {
    await technician.openAs('technician');
    await technician.press('customer agreed to the work', 'that line cannot be read', 'meter is category three');
    await technician.press('Enter it');
    await picture(page, 'visit-pad');
    expect(await accessFaults(page)).toEqual([]);
    await enter('94');
    await technician.press('Enter it');
    await enter('80');
    await technician.press('thermostat is calling for cooling');
    await technician.press('outdoor fan is not turning');
    await technician.press('compressor runs, then trips');
    await technician.acknowledgeCautions();
    await technician.press('More', 'A reading', 'volts a.c.', 'L1', 'ground');
    await enter('118');
    await technician.press('More', 'A reading', 'volts a.c.', 'L2', 'ground');
    await enter('117');
    await technician.press('More', 'Set it right');
    await enter('119');
    await technician.press('More');
    await picture(page, 'visit-more');
    const notices = page.getByRole('dialog', { name: 'More' }).getByRole('link', { name: 'Third-party notices' });
    expect(await notices.getAttribute('href')).toBe('/third-party-notices.txt');
    expect(await notices.getAttribute('target')).toBe('_blank');
    expect(await accessFaults(page)).toEqual([]);
    await technician.press('Something seen');
    // The step that is asked has a key of that name too.
    const seen = page.getByRole('dialog', { name: 'Something seen' });
    await seen.getByRole('button', { name: 'thermostat is not calling', exact: true }).click();
    await technician.settled();
    await technician.acknowledgeCautions();
    await technician.press('More', 'Power switched', 'Outdoor disconnect open and locked');
    await technician.acknowledgeCautions();
    expect(await technician.energy('outdoor-load')).toBe('reported-off');
    await technician.press('More', 'Prove it dead');
    await enter('240', '0', '0', '0', '0', '0', '0', '240');
    await technician.acknowledgeCautions();
    expect(await technician.energy('outdoor-load')).toBe('reads-dead');
    for (const section of ['cap-HERM', 'cap-FAN']) {
      await technician.press('More', 'A reading', 'volts d.c.', 'capacitor common', nameOf(section));
      await enter('0');
    }
    expect(await technician.energy('outdoor-load')).toBe('proven-dead');
    await technician.press('More', 'A reading', 'microfarads', 'capacitor common', nameOf('cap-FAN'));
    await enter('1.1');
    await technician.press('More', 'Part fitted or work done', 'dual capacitor');
    await enter('45', '5', '440');
    await technician.press('More', 'Recommend, sign');
    expect(await accessFaults(page)).toEqual([]);
    await page.getByLabel('Recommend to the customer').fill('a new filter');
    await page.getByLabel('Signed by the technician').fill('Robin Vale');
    await picture(page, 'visit-sign');
    await technician.press('Record it');
    await technician.sent();
    const { folded, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(standingReadings(folded)).toEqual([
      'outdoor-air 94 [degF]',
      'return-air 80 [degF]',
      'L1–ground 118 V',
      'L2–ground 119 V',
      'cap-C–cap-HERM 0 V',
      'cap-C–cap-FAN 0 V',
      'cap-C–cap-FAN 1.1 uF',
    ]);
    expect(folded.parts.map(({ part, ratings }) => [part, ratings])).toEqual([
      ['dual-capacitor', { 'herm-uF': 45, 'fan-uF': 5, volts: 440 }],
    ]);
    expect(folded.items.map(({ item }) => item)).toEqual(['consent-given', 'meter-category-three']);
    expect(folded.recommendations.map(({ text }) => text)).toEqual(['a new filter']);
    expect(folded.signatures).toMatchObject([{ who: 'technician', name: 'Robin Vale' }]);
    expect(folded.heard.every((line) => line.ear === 'typed')).toBe(true);
  }, 90_000);

  test('from arrival to its close, with no key but those of the page', async () => {
    await technician.openAs('technician');
    const pressed = await pressOn(60);
    await picture(page, 'visit-touch-closed');
    expect(await page.locator('[data-asked]').getAttribute('data-asked'), pressed.join(' → ')).toBe('closed');
    await technician.sent();
    const { folded, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(folded.summary).toBeDefined();
    expect(folded.heard.every((line) => line.ear === 'typed')).toBe(true);
  }, 120_000);

  test('a number is taken in the unit and with the sign that were chosen on the pad', async () => {
    await technician.openAs('technician');
    await technician.press('More', 'A reading', 'temperature', 'outdoor air', '°C', '5', 'minus', 'Enter');
    await technician.sent();
    const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
    expect([...folded.readings, ...folded.asked].map(({ reading }) => `${reading.value} ${reading.unit}`)).toContain(
      '-5 Cel',
    );
  });

  test('somebody is hurt: power off, help, and the visit is held until it is taken up', async () => {
    await technician.openAs('technician');
    await technician.press('More', 'Somebody is hurt');
    expect(await technician.said()).toMatch(/^Power off\. Call for help\./);
    expect(await page.locator('[data-asked]').getAttribute('data-asked')).toBe('held');
    await technician.press('Go on with the visit');
    expect(await page.locator('[data-asked]').getAttribute('data-asked')).toBe('step');
  });
});

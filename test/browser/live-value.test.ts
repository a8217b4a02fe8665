import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { cautionById, STANDING_RULES } from '../../client/words/talk/caution-words.ts';
import { accessFaults, cutOff, overflow } from './look-over.ts';
import { picture, ReadbackBrowser, SMALL_PHONE, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let page: Page;
let technician: Technician;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: SMALL_PHONE });
  page = await browser.page(server.url);
  technician = new Technician(page);
});
afterEach(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

const live = async () => page.locator('[data-live]').getAttribute('data-live');
const large = async () => (await page.locator('.live-number').textContent()) ?? '';

/** Each number of the proof, "–" where it is still to be read; the one that is measured now stands in brackets. */
async function proof(): Promise<readonly string[]> {
  return page.locator('.proof-number').evaluateAll((cells) =>
    cells.map((cell) => {
      const value = cell.querySelector('.proof-value')?.textContent ?? '';
      return cell.getAttribute('aria-current') === 'step' ? `[${value}]` : value;
    }),
  );
}

async function keys(): Promise<readonly string[]> {
  return page.locator('.visit-keys .key').allTextContents();
}

/** Nothing sticks out of the page or of its own box at this width. */
async function isWhole(): Promise<void> {
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  expect(await cutOff(page)).toEqual([]);
}

describe('the start', () => {
  test('chooses no unit by itself, and asks the plate by keys that fit', async () => {
    expect(await page.getByLabel('Unit').inputValue()).toBe('0');
    await technician.openUnknown();
    await technician.press('customer agreed to the work');
    expect(await keys()).toEqual(['Write it', 'that line cannot be read', 'More']);
    await picture(page, 'plate-asked');
    await isWhole();
    await technician.press('Write it');
    await page.getByLabel('model').fill('24ACX7-b');
    await page.getByLabel('supply volts, V').fill('230');
    await page.getByLabel('refrigerant').selectOption('R-410A');
    await picture(page, 'plate-sheet');
    await isWhole();
    expect(await accessFaults(page)).toEqual([]);
    await technician.press('Enter the plate');
    expect(await technician.asked()).toContain('Serial');
    await technician.press('that line cannot be read');
    expect(await technician.asked()).toContain('R L A');
    await technician.type('14.1 RLA, 77 LRA');
    expect(await technician.asked()).toContain('Fan');
    await technician.press('More', 'Pass on this');
    expect(await page.locator('[data-asked]').getAttribute('data-asked')).toBe('caution');
    await isWhole();
    await picture(page, 'standing-rules');
    // All that was said in its breaths stands on the screen, and what answers it beside the acknowledgement.
    for (const id of STANDING_RULES) expect(await technician.asked()).toContain(cautionById(id).words);
    expect(await keys()).toEqual(expect.arrayContaining(['Live – I have it', 'meter is category three']));
  });
});

describe('the large value', () => {
  test('is what is measured now, at a step, at a question and through a proof', async () => {
    await technician.openAs('technician');
    await technician.type('customer agrees');
    await technician.type('plate is unreadable');
    await technician.type('meter is cat three');
    expect([await live(), await large()]).toEqual(['awaited', '–°F']);
    await technician.type('ninety four');
    expect([await live(), await large()]).toEqual(['awaited', '–°F']);
    expect(await page.locator('[data-last-value]').getAttribute('data-last-value')).toBe('94');
    await isWhole();
    await picture(page, 'live-awaited');
    for (const line of ['eighty', 'thermostat is calling', 'outdoor fan is not turning', 'compressor runs then trips'])
      await technician.type(line);
    await technician.acknowledgeCautions();
    // A place that is named alone is what is measured now, and its number is no other's.
    await technician.type('suction pressure');
    expect([await live(), await large()]).toEqual(['awaited', '–psig']);
    expect(await technician.asked()).toContain('Suction pressure');
    expect(await keys()).toEqual(['Enter it', 'Leave it out', 'More']);
    await picture(page, 'live-place-named');
    await isWhole();
    await technician.type('one eighteen');
    expect([await live(), await large()]).toEqual(['awaited', '–A']);
    expect(await page.locator('[data-last-value]').getAttribute('data-last-value')).toBe('118');
    await technician.type('take that back');
    await technician.type('leg one to ground one eighteen');
    await technician.acknowledgeCautions();
    await technician.type('eighty one volts');
    expect([await live(), await large()]).toEqual(['unplaced', '81V']);
    expect((await page.locator('.live-place').textContent())?.trim()).toBe('place? asked');
    await picture(page, 'live-unplaced');
    await isWhole();
    await technician.press('Leave it out');
    for (const line of ['thermostat is not calling', 'outdoor disconnect is pulled and locked'])
      await technician.type(line);
    await technician.acknowledgeCautions();
    expect(await live()).toBe('proof');
    expect(await proof()).toEqual(['[–]', '–', '–', '–', '–', '–', '–', '–']);
    await technician.type('two forty');
    expect(await proof()).toEqual(['240', '[–]', '–', '–', '–', '–', '–', '–']);
    await technician.type('zero');
    await technician.type('zero');
    expect(await proof()).toEqual(['240', '0', '0', '[–]', '–', '–', '–', '–']);
    await isWhole();
    await picture(page, 'live-proof');
    expect(await accessFaults(page)).toEqual([]);
    for (const line of ['zero', 'zero', 'zero', 'zero', 'two forty']) await technician.type(line);
    await technician.acknowledgeCautions();
    expect([await live(), await large()]).toEqual(['awaited', '–V']);
    for (const line of ['zero', 'zero']) await technician.type(line);
    // Nobody asked for it: what does not fit is asked back.
    await technician.type('herm section thirty three microfarads on the bench');
    expect([await live(), await large()]).toEqual(['questioned', '33µF']);
    await picture(page, 'live-questioned');
    await isWhole();
    await technician.type('no');
    for (const value of ['one', 'two'])
      await technician.type(`fan section one point ${value} microfarads on the bench`);
    await technician.type('fitted a forty five over five dual capacitor four forty volt');
    await technician.type('covers are on');
    await technician.acknowledgeCautions();
    expect(await page.locator('.leading').textContent()).toMatch(/^What else it could be:/);
    await isWhole();
    await picture(page, 'after-repair');
  }, 120_000);
});

describe('a warning', () => {
  test('stays on the screen beside the question that its words brought about, until something else is heard', async () => {
    await technician.openAs('technician');
    await technician.type('customer agrees');
    await technician.type('stuck a penny behind the fuse');
    const warned = page.locator('[data-warned]');
    expect(await warned.textContent()).toContain('What is bypassed protects nothing');
    await isWhole();
    await picture(page, 'warned-and-asked');
    expect(await accessFaults(page)).toEqual([]);
    await technician.type('say again');
    expect(await warned.count()).toBe(0);
  }, 120_000);
});

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { DESK, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit } from './served-record.ts';
import { Technician } from './technician.ts';

const SENTENCES = [
  'outdoor air ninety four degrees',
  'return air eighty degrees',
  'thermostat is calling',
  'outdoor fan is not turning',
  'compressor runs then trips',
  'live',
  'leg one to ground one eighteen',
];

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let visit: string;
let technician: Technician;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: DESK });
  technician = new Technician(await browser.page(server.url));
  await technician.openVisit('Reading room', 'does not cool');
  for (const sentence of SENTENCES) await technician.type(sentence);
  await technician.sent();
  visit = await onlyVisit(server.url);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

async function openReplay(fragment = ''): Promise<Page> {
  const page = await browser.page(`${server.url}/review?visit=${visit}${fragment}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  return page;
}

const shownCount = async (page: Page) => Number(await page.locator('main.review').getAttribute('data-count'));
const slider = (page: Page) => page.getByRole('slider', { name: 'Moment of the visit' });

describe('a visit on its time line', () => {
  test('is followed live: what the technician enters is there a moment later', async () => {
    const page = await openReplay();
    await technician.page.bringToFront();
    await technician.type('leg two to ground one nineteen');
    await page.locator('.moment-value').getByText('119 V').waitFor();
    await picture(page, 'review-live');
    expect(await page.locator('[data-heard]').textContent()).toBe('leg two to ground one nineteen');
    expect(await page.locator('.moment [data-zone="outdoor-load"]').getAttribute('data-energy')).toBe('live');
    await page.close();
  });

  test('goes to a moment by link, and shows only what had happened by then', async () => {
    const page = await openReplay('#t=0.4');
    expect(await shownCount(page)).toBeGreaterThan(0);
    expect(await page.locator('tr[data-reading]').count()).toBe(0);
    expect(await page.locator('.moment [data-zone="outdoor-load"]').getAttribute('data-energy')).toBe('unknown');
    await page.evaluate(() => {
      location.hash = '#t=9999';
    });
    await page.locator('tr[data-reading]').nth(3).waitFor();
    expect(await page.locator('[data-moment-link]').getAttribute('href')).toMatch(/^#t=\d/);
    await page.close();
  });

  test('is walked by keys, one entry or some seconds at a time, and tells where it is', async () => {
    const page = await openReplay('#t=0');
    await slider(page).focus();
    const start = await shownCount(page);
    await page.keyboard.press('.');
    const next = await shownCount(page);
    expect(next).toBeGreaterThan(start);
    await page.keyboard.press(',');
    expect(await shownCount(page)).toBe(start);
    await page.keyboard.press('End');
    expect(await shownCount(page)).toBe(Number(await page.locator('main.review').getAttribute('data-events')));
    expect(await slider(page).getAttribute('aria-valuetext')).toMatch(/^0:.* of 0:.*: \S/);
    await page.keyboard.press('Home');
    expect(await shownCount(page)).toBe(start);
    expect(new URL(page.url()).hash).toBe('#t=0');
    await page.keyboard.press('PageUp');
    expect(await shownCount(page)).toBeGreaterThan(start);
    await page.close();
  });

  test('plays, pauses where it is, and stops at the end', async () => {
    const page = await openReplay('#t=0');
    const start = await shownCount(page);
    await page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => shownCount(page), { timeout: 10_000 }).toBeGreaterThan(start);
    await page.getByRole('button', { name: 'Pause' }).click();
    const paused = await shownCount(page);
    await page.waitForTimeout(400);
    expect(await shownCount(page)).toBe(paused);
    await page.getByRole('button', { name: 'fast' }).click();
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByRole('button', { name: 'Play' }).waitFor();
    expect(await shownCount(page)).toBe(Number(await page.locator('main.review').getAttribute('data-events')));
    await page.close();
  });

  test('one choice moves transcript, chart, energy and readings alike', async () => {
    const page = await openReplay('#t=0');
    await page
      .locator('.transcript li[data-kind="heard"]', { hasText: 'compressor runs then trips' })
      .locator('button')
      .click();
    expect(await page.locator('[data-heard]').textContent()).toBe('compressor runs then trips');
    expect(await page.locator('.moment [data-zone="outdoor-load"]').getAttribute('data-energy')).toBe('live');
    await expect.poll(() => page.locator('tr[data-reading]').count()).toBe(2);
    expect(await page.locator('.tracks-moment').count()).toBe(1);
    const marked = page.locator('[aria-current="step"]');
    await expect.poll(() => marked.textContent()).toContain('compressor');
    await expect.poll(() => page.locator('[aria-current="step"]').count()).toBe(1);
    const box = await page.locator('.tracks').boundingBox();
    await page.mouse.click((box?.x ?? 0) + 110, (box?.y ?? 0) + 40);
    await page.locator('tr[data-reading]').first().waitFor({ state: 'detached' });
    await page.close();
  });
});

test('the record is verified at one key, which says what speaks against it and what it cannot know', async () => {
  const page = await openReplay();
  await page.getByRole('button', { name: 'Verify the record' }).click();
  const said = page.locator('.record-check-said');
  await said.getByText(/^Nothing speaks against its \d+ events\.$/).waitFor();
  expect(await said.textContent()).toContain('Not known: ');
  // This page sealed what is personal.
  expect(await said.textContent()).not.toContain('written in the open');
  await picture(page, 'review-verified');
  await page.close();
});

test('an address that names no visit says so, and leads back to the list', async () => {
  const page = await browser.page(`${server.url}/review?visit=../../etc`);
  expect(await page.getByRole('alert').textContent()).toMatch(/^No visit has a name like the one in this address/);
  await page.getByRole('link', { name: 'All visits' }).click();
  await page.locator('a.visit-card').first().waitFor();
  await page.close();
});

// Last: for a page of plain text the browser asks for an icon by itself, which would stand among its complaints.
test('the list of visits leads to the third-party notices', async () => {
  const page = await browser.page(`${server.url}/review`);
  const opened = browser.context.waitForEvent('page');
  await page.getByRole('link', { name: 'Third-party notices' }).click();
  const notices = await opened;
  await notices.getByText('Third-party notices of Readback').waitFor();
  await notices.close();
  await page.close();
});

import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { Outbox } from '../../client/record/outbox.ts';
import { accessFaults } from './look-over.ts';
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
  await page.locator('main.review[data-level="true"]').waitFor();
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
    expect(await page.locator('tr[data-reading]').count()).toBe(2);
    const lines = await page.locator('.track-moment').evaluateAll((all) => all.map((line) => line.getAttribute('x1')));
    expect(new Set(lines).size).toBe(1);
    expect(lines).toHaveLength(3);
    expect(await page.locator('[aria-current="step"]').count()).toBe(1);
    const box = await page.locator('.tracks').boundingBox();
    await page.mouse.click((box?.x ?? 0) + 110, (box?.y ?? 0) + 40);
    await page.locator('tr[data-reading]').first().waitFor({ state: 'detached' });
    await page.close();
  });
});

describe('a record that other hands wrote', () => {
  const time = (mono: number) => ({ at: new Date(1_781_000_000_000 + mono).toISOString(), mono });

  /** Puts bodies on the server as a device would. */
  async function write(name: string, bodies: readonly string[]): Promise<void> {
    const stream = { company: 'local', visit: name, device: 'other', epoch: 1 };
    const log = await openMemoryLog(stream, (bytes) => createHash('sha256').update(bytes).digest());
    const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
    await outbox.append(bodies);
    await outbox.settled();
    outbox.stop();
  }

  test('is verified at one key, which says what speaks against it and what it cannot know', async () => {
    const page = await openReplay();
    await page.getByRole('button', { name: 'Verify the record' }).click();
    const said = page.locator('.record-check-said');
    await said.getByText(/^Nothing speaks against its \d+ events\.$/).waitFor();
    expect(await said.textContent()).toContain('Not known: ');
    await picture(page, 'review-verified');
    await page.close();
  });

  test('a script in a note is text, and entries of unknown kinds are shown as such', async () => {
    const script = "<img src=x onerror=\"document.title='caught'\"><script>document.title='caught'</script>";
    await write('odd-record', [
      JSON.stringify({
        type: 'visit.opened',
        visit: 'odd-record',
        site: script,
        complaint: script,
        role: 'technician',
        unit: { id: 'unknown' },
        software: 'other 9',
        time: time(0),
      }),
      JSON.stringify({ type: 'note.taken', text: script, time: time(1_000) }),
      JSON.stringify({ type: 'drone.launched', height: 3, time: time(2_000) }),
      '{"no":"event"}',
      JSON.stringify({ type: 'note.taken', text: 'after', time: time(3_000) }),
    ]);
    const page = await browser.page(`${server.url}/review?visit=odd-record`);
    await page.locator('main.review[data-level="true"]').waitFor();
    expect(await page.locator('.line-note .line-text').first().textContent()).toBe(`Note: ${script}`);
    expect(await page.locator('.line-unknown .line-text').allTextContents()).toEqual([
      'Unknown entry: drone.launched',
      'Unknown entry: unreadable',
    ]);
    expect(await page.locator('.line-note').last().textContent()).toContain('after');
    await picture(page, 'review-odd-record');
    await page.goto(`${server.url}/review`);
    await page.locator('.visit-card', { hasText: 'onerror' }).waitFor();
    expect(await page.title()).toBe('Readback');
    expect(await accessFaults(page)).toEqual([]);
    expect(browser.errors).toEqual([]);
    await page.close();
  });

  test('a visit that the server does not know is waited for, and its record read as it comes', async () => {
    const page = await browser.page(`${server.url}/review?visit=late-visit`);
    await page.getByText('holds no entry of this visit yet').waitFor();
    await write('late-visit', [JSON.stringify({ type: 'note.taken', text: 'here at last', time: time(0) })]);
    await page.getByText('here at last').first().waitFor();
    await page.close();
  });

  test('an entry that has the form of one of ours but not its fields is shown as damaged, and all the rest beside it', async () => {
    await write('damaged-record', [
      JSON.stringify({ type: 'reading.logged', number: 1, time: time(0) }),
      JSON.stringify({ type: 'note.taken', text: 'the lid is bent', time: time(1) }),
    ]);
    const page = await browser.page(`${server.url}/review?visit=damaged-record`);
    await page.getByText('damaged event: reading.logged').first().waitFor();
    await page.getByText('the lid is bent').first().waitFor();
    await page.close();
  });
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

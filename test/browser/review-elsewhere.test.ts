import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, overflow } from './look-over.ts';
import { at, body, note, ODD_RECORDS, opened } from './odd-records.ts';
import { putVisit, recordedBodies } from './put-visit.ts';
import { DESK, PHONE, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

/** What leaves the review, stands beside it in the list, or comes before its charts. */
let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: DESK });
  await putVisit(server.url, 'library', recordedBodies('library'));
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

describe('a record that other hands wrote', () => {
  test.each(ODD_RECORDS)('%s is listed, printed and taken away', async (what, bodies) => {
    const name = `odd-${what.replaceAll(/\W+/g, '-')}`;
    await putVisit(server.url, name, bodies);
    const page = await browser.page(`${server.url}/review?visit=${name}&print`);
    await page.locator('main[data-printed="true"]').waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.setViewportSize(PHONE);
    expect(await overflow(page)).toBe(0);
    await page.setViewportSize(DESK);
    const pdf = await page.pdf({ format: 'Letter' });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    await page.goto(`${server.url}/review`);
    await page.locator(`.visit-card[href="/review?visit=${encodeURIComponent(name)}"]`).waitFor();
    expect(await overflow(page)).toBe(0);
    await page.close();
    expect(browser.errors).toEqual([]);
  });
});

describe('a visit that is taken away', () => {
  test('comes in each form that is offered, and each is what it says', async () => {
    const page = await open('library');
    await page.locator('.take-away summary').click();
    const ways = await page
      .locator('.take-away a')
      .evaluateAll((all) => all.map((one) => one.getAttribute('href') ?? ''));
    expect(ways.length).toBeGreaterThan(2);
    for (const way of ways) {
      const answer = await page.request.get(`${server.url}${way}`);
      expect([way, answer.status()]).toEqual([way, 200]);
      const text = await answer.text();
      if (way.endsWith('.vtt')) expect(text).toMatch(/^WEBVTT/);
      else if (way.endsWith('.csv')) expect(text.split('\r\n').length).toBeGreaterThan(10);
      else if (/\.jsonl?$/.test(way))
        expect(() => JSON.parse(text.split('\n', way.endsWith('l') ? 1 : undefined).join('\n'))).not.toThrow();
      else expect(text.length).toBeGreaterThan(100);
    }
    await page.close();
  });
});

describe('a visit that is opened', () => {
  test('shows its answers, talk, moment and player in one frame, and its charts and tables in a later one', async () => {
    const page = await open('library');
    const [first, whole] = await page.evaluate(() =>
      ['readback.replay-open', 'readback.replay-drawn'].map(
        (name) => performance.getEntriesByName(name).at(-1)?.startTime ?? Number.NaN,
      ),
    );
    expect(first).toBeLessThan(whole ?? Number.NaN);
    await page.close();

    const before = await browser.context.newPage();
    // The frame that would bring the charts never comes: what is there is the first one.
    await before.addInitScript(() => {
      const mark = performance.mark.bind(performance);
      performance.mark = (name: string, options?: PerformanceMarkOptions) => {
        if (name === 'readback.replay-open') throw new Error('held at the first frame');
        return mark(name, options);
      };
    });
    await before.goto(`${server.url}/review?visit=library`);
    await before.locator('main.review').waitFor();
    await expect.poll(() => before.locator('.transcript .line').count()).toBeGreaterThan(50);
    for (const id of ['wrong', 'sure', 'done', 'cools', 'rightly'])
      expect((await before.locator(`[data-answer="${id}"]`).textContent())?.length).toBeGreaterThan(10);
    expect(await before.locator('.moment .energy-cell').count()).toBeGreaterThan(4);
    expect(await before.locator('.player input[type="range"]').count()).toBe(1);
    expect(await before.locator('.tracks').count()).toBe(0);
    await before.close();
    browser.errors.length = 0;
  });

  test('tells each moment by what passed since the beginning and by the clock on the wall', async () => {
    const page = await open('library', '#t=20');
    expect(await page.locator('.player-time').textContent()).toMatch(/0:20\.0 \/ \d+:\d\d.* \d\d:\d\d:\d\d/);
    const axis = await page.locator('.track-axis .track-name').allTextContents();
    expect(axis.length).toBeGreaterThan(1);
    await page.close();
  });
});

describe('the list', () => {
  test('marks what a supervisor should see: work unproven, a caution not acknowledged, another visit to the unit', async () => {
    const serial = (time: ReturnType<typeof at>) =>
      body('nameplate.logged', { field: 'serial', value: 'SN4711' }, time);
    const dayAfter = at(86_400_000);
    const unproven = body(
      'work.unproven',
      { cause: 1, what: 'fan wire lifted', zone: 'outdoor-load', state: 'live' },
      at(2_000),
    );
    const caution = body(
      'caution.spoken',
      { caution: 'live-line', words: 'Live, line volts.', source: 'common practice', zone: 'outdoor-load' },
      at(3_000),
    );
    await putVisit(server.url, 'marked-one', [opened('Mill'), serial(at(1_000)), unproven, caution, note('left it')]);
    await putVisit(server.url, 'marked-two', [opened('Mill', 'does not cool', dayAfter), serial(dayAfter)]);
    const page = await browser.page(`${server.url}/review`);
    const marks = page.locator('.visit-card[href$="marked-one"] .visit-marks');
    await expect.poll(() => marks.textContent()).toMatch(/1 × work not proven dead/);
    expect(await marks.textContent()).toMatch(/caution/i);
    await expect
      .poll(async () => (await page.locator('.visit-card .visit-marks').allTextContents()).join())
      .toMatch(/1 visit at this unit in the 90 days before/);
    await page.close();
  });
});

describe('More', () => {
  test('stands in groups, and says of each key that is of no use now why', async () => {
    const page = await browser.page(server.url);
    const technician = new Technician(page);
    await technician.openAs('technician');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    const groups = await page
      .locator('dialog[open] .key-group')
      .evaluateAll((all) =>
        all.map((group) => ({ name: group.getAttribute('aria-label'), keys: group.querySelectorAll('.key').length })),
      );
    expect(groups.length).toBeGreaterThan(4);
    for (const { name, keys } of groups) expect([name, keys > 0 && keys < 9]).toEqual([name, true]);
    const useless = await page
      .locator('dialog[open] .key:disabled')
      .evaluateAll((all) => all.map((key) => key.querySelector('small')?.textContent ?? ''));
    expect(useless.length).toBeGreaterThan(0);
    for (const why of useless) expect(why).toMatch(/\w+ \w+/);
    await page.keyboard.press('Escape');
    await technician.type('outdoor air ninety four degrees');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    expect(await page.locator('dialog[open] .key:disabled', { hasText: /Take/ }).count()).toBe(0);
    await page.close();
  });
});

async function open(visit: string, fragment = ''): Promise<Page> {
  const page = await browser.page(`${server.url}/review?visit=${visit}${fragment}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  return page;
}

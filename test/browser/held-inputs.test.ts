import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
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
  await technician.openAs('technician');
});
afterEach(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

const LINE = '#type-line';
const field = () => page.locator(LINE).inputValue();
const loaded = async () => {
  await page.reload();
  await page.locator('main.visit').waitFor();
  await technician.settled();
};
const heard = async () => {
  await technician.sent();
  return (await servedRecord(server.url, await onlyVisit(server.url))).folded.heard.map(({ text }) => text);
};
const visitWorker = () => page.workers().find((one) => one.url().includes('/visit-worker'));

describe('a page that is loaded again', () => {
  test.each([0, 0, 30, 100, 200])(
    '%i ms after a line was entered loses nothing and takes nothing twice',
    async (ms) => {
      await page.locator(LINE).fill('outdoor air ninety four degrees');
      await page.evaluate(async (ms) => {
        document.querySelector<HTMLFormElement>('.type-line')?.requestSubmit();
        if (ms > 0) await new Promise((resolve) => setTimeout(resolve, ms));
        location.reload();
      }, ms);
      await page.waitForLoadState();
      await page.locator('main.visit').waitFor();
      await technician.settled();
      const back = await field();
      if (back !== '') await page.locator(LINE).press('Enter');
      await technician.settled();
      expect(await field()).toBe('');
      expect(await heard()).toEqual(['outdoor air ninety four degrees']);
      await loaded();
      expect(await field()).toBe('');
    },
  );

  test('gives back each of several lines, and the one that was being typed', async () => {
    await page.evaluate(() => {
      const line = document.querySelector<HTMLInputElement>('#type-line');
      if (line === null) return;
      for (const words of ['return air eighty', 'supply air sixty']) {
        line.value = words;
        line.form?.requestSubmit();
      }
      line.value = 'half a li';
      line.dispatchEvent(new Event('input', { bubbles: true }));
      location.reload();
    });
    await page.waitForEvent('load');
    await page.locator('main.visit').waitFor();
    await technician.settled();
    for (const words of ['return air eighty', 'supply air sixty']) {
      expect(await field()).toBe(words);
      await page.locator(LINE).press('Enter');
      await technician.settled();
    }
    expect(await field()).toBe('half a li');
    await page.locator(LINE).fill('');
    expect(await heard()).toEqual(['return air eighty', 'supply air sixty']);
    await loaded();
    expect(await field()).toBe('');
  });

  test('tells what was entered on a pad and is not in the record', async () => {
    await technician.press('customer agreed to the work', 'More', 'Prove it dead');
    for (const digit of ['2', '4', '0']) await page.locator(`[data-key="${digit}"]`).click();
    await page.locator('[data-key="enter"]').click();
    await page.locator('[data-key="0"]').click();
    await page.locator('[data-key="enter"]').click();
    await loaded();
    expect(await page.locator('[data-left] p').textContent()).toMatch(
      /^Entered, not in the record: 240, 0 \(2 of \d on the pad\)\. Enter it again/,
    );
    await technician.press('Noted');
    await loaded();
    expect(await page.locator('[data-left]').count()).toBe(0);
  });

  test('tells of a pad that was left nothing', async () => {
    await technician.press('customer agreed to the work', 'More', 'Prove it dead');
    await page.locator('[data-key="2"]').click();
    await page.locator('[data-key="enter"]').click();
    await page.locator('[data-key="cancel"]').click();
    await loaded();
    expect(await page.locator('[data-left]').count()).toBe(0);
  });
});

describe("the visit's worker", () => {
  test('gone without a word: told, the line is kept, and the visit goes on', async () => {
    await technician.type('customer agrees');
    await visitWorker()?.evaluate(() => globalThis.close());
    await technician.send('outdoor air ninety four degrees');
    await page.locator('[data-problem]').waitFor({ timeout: 20_000 });
    expect(await page.locator('[data-problem]').textContent()).toContain('The program of the visit stopped');
    await technician.press('Try again');
    await page.locator('[data-problem]').waitFor({ state: 'detached' });
    expect(await field()).toBe('outdoor air ninety four degrees');
    await page.locator(LINE).press('Enter');
    await technician.settled();
    expect(await heard()).toEqual(['customer agrees', 'outdoor air ninety four degrees']);
  });

  test('of the grammar gone without a word: the page understands by itself', async () => {
    await technician.type('customer agrees');
    const grammar = page.workers().find((one) => one.url().includes('/understand-worker'));
    expect(grammar).toBeDefined();
    await grammar?.evaluate(() => globalThis.close());
    await technician.send('outdoor air ninety four degrees');
    await technician.send('return air eighty degrees');
    await expect.poll(heard, { timeout: 60_000 }).toHaveLength(3);
    expect(await page.locator('[data-problem]').count()).toBe(0);
    expect(await heard()).toEqual(['customer agrees', 'outdoor air ninety four degrees', 'return air eighty degrees']);
  });

  test('that is busy, and a page that is, are taken for what they are', async () => {
    await technician.send('customer agrees');
    const hold = (ms: number) => {
      for (const until = performance.now() + ms; performance.now() < until; );
    };
    void visitWorker()?.evaluate(hold, 4000);
    await technician.send('outdoor air ninety four degrees');
    await page.evaluate((ms) => {
      const line = document.querySelector<HTMLInputElement>('#type-line');
      if (line !== null) line.value = 'return air eighty degrees';
      line?.form?.requestSubmit();
      for (const until = performance.now() + ms; performance.now() < until; );
    }, 10_000);
    await technician.settled();
    expect(await page.locator('[data-problem]').count()).toBe(0);
    expect(await heard()).toHaveLength(3);
  });
});

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, cutOff, overflow, overlaps } from './look-over.ts';
import { PHONE, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

/** What people, and others, put into a note. */
const NOTES: Readonly<Record<string, string>> = {
  'of 5,000 characters': 'the lug at the load side was loose and dark. '.repeat(112).slice(0, 5_000).trim(),
  'of one word of 5,000 letters': 'x'.repeat(5_000),
  'from right to left': 'الضاغط لا يعمل منذ يومين، والمروحة تدور',
  'from right to left, with numbers and English': 'המדחס לא עובד, leg one 118 volts, כבר יומיים',
  'with emoji': '🔥 it hums 👨‍👩‍👧‍👦 then trips 👍🏽',
  'with a script': '<img src=x onerror="globalThis.ran=1"><script>globalThis.ran = 1</script>',
};

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let page: Page;
let technician: Technician;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  page = await browser.page(server.url);
  technician = new Technician(page);
  await technician.openAs('technician');
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** As if pasted: key by key would take minutes. */
async function note(text: string): Promise<void> {
  await page.locator('#type-line').fill(`note ${text}`);
  await page.keyboard.press('Enter');
  await technician.settled();
}

describe('a note', () => {
  test.each(Object.entries(NOTES))('%s stands whole in the record, and the page as it was', async (name, text) => {
    const before = await technician.asked();
    await note(text);
    expect(await technician.said()).toBe('Noted.');
    expect(await technician.asked()).toBe(before);
    for (const size of [{ width: 320, height: 568 }, PHONE, { width: 844, height: 390 }]) {
      await page.setViewportSize(size);
      expect.soft(await overflow(page), `${size.width}`).toBeLessThanOrEqual(0);
      expect.soft(await cutOff(page), `${size.width}`).toEqual([]);
      expect.soft(await overlaps(page), `${size.width}`).toEqual([]);
    }
    await page.setViewportSize(PHONE);
    await picture(page, `note-${name.replaceAll(/\W+/g, '-')}`);
    expect(await accessFaults(page)).toEqual([]);
    await technician.sent();
    const { folded, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(folded.notes.at(-1)?.text).toBe(text);
  });

  test('is never run, and loads nothing', async () => {
    expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false);
    expect(browser.requests.filter((url) => url.endsWith('/x'))).toEqual([]);
    expect(browser.errors).toEqual([]);
  });
});

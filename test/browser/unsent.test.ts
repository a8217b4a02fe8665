import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer | undefined;
let browser: ReadbackBrowser;
let page: Page;
let technician: Technician;
let url: string;
let port: number;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  ({ url, port } = server);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  page = await browser.page(url);
  technician = new Technician(page);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server?.stop();
  await folder.remove();
});

async function toTheClose(): Promise<void> {
  await technician.type('outdoor air ninety four degrees');
  await technician.type('finish the visit');
}

const kept = () => page.locator('.kept-visits li');

describe('visits that were closed without a server', { timeout: 120_000 }, () => {
  test('stand in a list with what is unsent, can be read, and are sent when it is back, whatever page is open', async () => {
    // What an open visit needs is on the device by then.
    await technician.openVisit('Reading room', 'does not cool');
    await server?.stop();
    server = undefined;
    await toTheClose();
    await page.getByRole('button', { name: 'To the visits' }).click();
    await technician.openVisit('Bakery', 'does not cool');
    await toTheClose();
    await page.getByRole('button', { name: 'To the visits' }).click();
    await kept().nth(1).waitFor();
    const before = await kept().allTextContents();
    expect(before).toHaveLength(2);
    for (const line of before) expect(line).toMatch(/\d+ entries not sent yet$/);
    await picture(page, 'start-unsent');
    await page.getByRole('button', { name: 'Reading room: does not cool' }).click();
    expect(await page.locator('[data-kept-visit]').textContent()).toContain('outdoor air');
    await page.getByRole('button', { name: 'Back to the start' }).click();
    server = await startServer(`${folder.path}/data`, port);
    await page.evaluate(() => dispatchEvent(new Event('online')));
    for (const line of [0, 1])
      await kept().nth(line).getByText('the server has all of it').waitFor({ timeout: 60_000 });
    const { visits } = (await (await fetch(`${url}/api/visits`)).json()) as { visits: readonly { visit: string }[] };
    expect(visits).toHaveLength(2);
    for (const { visit } of visits) {
      const { events } = await servedRecord(url, visit);
      expect(events.some(({ body }) => body.includes('"visit.closed"'))).toBe(true);
    }
  });
});

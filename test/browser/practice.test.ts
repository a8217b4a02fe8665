import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, overflow } from './look-over.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { DESK, PHONE, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Trainee } from './trainee.ts';

const FOLDER = join(PROJECT_ROOT, 'test-results/practice');

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  await mkdir(FOLDER, { recursive: true });
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: DESK });
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

async function pictures(page: Page, name: string): Promise<void> {
  for (const size of [PHONE, DESK]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: join(FOLDER, `${name}-${size.width}.png`), fullPage: true });
  }
}

describe('the practice', () => {
  test('by typing, to its debrief beside the planner’s run', async () => {
    const page = await browser.page(`${server.url}/practice`);
    await page.getByRole('button', { name: 'Begin' }).waitFor();
    expect(await overflow(page)).toBe(0);
    await pictures(page, 'start');
    const trainee = new Trainee(page);
    await trainee.begin(server.url, 'motors-411');
    await trainee.type('outdoor air', 'return air', 'thermostat is calling', 'look at the fan');
    await trainee.type('look at the compressor');
    await page.locator('[data-asked="suspect"]').waitFor();
    await trainee.type('two', 'hint');
    expect(await page.locator('.practice-made tbody tr').count()).toBeGreaterThan(2);
    expect(await accessFaults(page)).toEqual([]);
    await pictures(page, 'running');
    await page.setViewportSize(DESK);
    await trainee.type('ohms leg one to leg two');
    await trainee.stage('debrief');
    expect(await page.locator('.practice-stops [data-weight="harm"]').textContent()).toMatch(/meter on ohms/);
    expect(await page.locator('[data-count="harmful"] td').allTextContents()).toEqual(['1', '0']);
    expect(await page.locator('[data-run="planner"] [data-count]').count()).toBe(0);
    expect(Number(await page.locator('[data-run="planner"]').getAttribute('data-count'))).toBeGreaterThan(50);
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await accessFaults(page, 'landmark-unique'), colorScheme).toEqual([]);
    }
    await pictures(page, 'debrief');
    // Never among the visits of this device, and nothing on the server.
    await page.goto(`${server.url}/?visits`);
    await page.getByRole('heading').first().waitFor();
    expect(await page.getByText('practice', { exact: true }).count()).toBe(0);
    await page.goto(`${server.url}/practice`);
    expect(await page.locator('tr[data-family="motors"] td').first().textContent()).toBe('1');
    expect(browser.errors).toEqual([]);
    await page.close();
  }, 180_000);

  test('shows at once what is taken, and brings up the drawing where probes are to be placed', async () => {
    const page = await browser.page(`${server.url}/practice`);
    await page.setViewportSize(PHONE);
    const trainee = new Trainee(page);
    await trainee.begin(server.url, 'motors-411');
    // Three sentences at once, then a key: all of them are on the screen before the first is worked out.
    const taken = await page.evaluate(() => {
      const form = document.querySelector<HTMLFormElement>('.practice-say')!;
      const input = form.querySelector('input')!;
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
      const say = (line: string) => {
        set.call(input, line);
        input.dispatchEvent(new Event('input', { bubbles: true }));
        return new Promise((resolve) => requestAnimationFrame(() => resolve(form.requestSubmit())));
      };
      return (async () => {
        for (const line of ['outdoor air', 'return air', 'thermostat is calling']) await say(line);
        const ohms = [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Ohms')!;
        ohms.click();
        await new Promise((resolve) => setTimeout(resolve, 0));
        const lines = [...document.querySelectorAll('.practice-talk li[data-by="you"]')].map(
          ({ textContent }) => textContent,
        );
        return { lines: lines.length, pressed: ohms.getAttribute('aria-pressed') };
      })();
    });
    expect(taken).toEqual({ lines: 4, pressed: 'true' });
    await page.locator('main[data-waiting="0"]').waitFor();
    expect(await page.locator('.practice-talk li[data-taken]').count()).toBe(0);
    await trainee.type('meter on volts', 'look at the fan', 'leg one to ground', 'none yet', 'live');
    await trainee.type('thermostat is not calling');
    await trainee.type('outdoor disconnect is pulled and locked', 'prove the meter');
    const drawing = page.locator('.ladder-scroll');
    await expect.poll(() => drawing.evaluate((one) => one.getBoundingClientRect().top < innerHeight)).toBe(true);
    expect(await page.locator('.practice-placing').textContent()).toMatch(/Leg one/i);
    await page.screenshot({ path: join(FOLDER, 'placing-390.png') });
    await page.setViewportSize(DESK);
    expect(browser.errors).toEqual([]);
    await page.close();
  }, 120_000);

  test('refuses an address that sets nothing', async () => {
    const page = await browser.page(`${server.url}/practice?exercise=engines-7`);
    expect(await page.getByRole('alert').textContent()).toMatch(/No such family/);
    await page.close();
  });
});

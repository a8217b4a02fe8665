import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, overflow } from './look-over.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { DESK, PHONE, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';

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

const stage = (page: Page, name: string) =>
  page.locator(`main.practice[data-stage="${name}"]`).waitFor({ timeout: 60_000 });

async function begin(page: Page, exercise: string): Promise<void> {
  await page.goto(`${server.url}/practice?exercise=${exercise}`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await stage(page, 'running');
}

/** Says it by the keyboard and waits until all of it has come about. */
async function type(page: Page, ...lines: readonly string[]): Promise<void> {
  for (const line of lines) {
    const count = Number(await page.locator('main.practice').getAttribute('data-lines'));
    await page.getByLabel('Say what you do').fill(line);
    await page.keyboard.press('Enter');
    await page.waitForFunction((before) => {
      const main = document.querySelector<HTMLElement>('main.practice');
      return (
        main?.dataset['stage'] !== 'running' || (Number(main.dataset['lines']) > before && main.ariaBusy === 'false')
      );
    }, count);
  }
}

async function pictures(page: Page, name: string): Promise<void> {
  for (const size of [PHONE, DESK]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: join(FOLDER, `${name}-${size.width}.png`), fullPage: true });
  }
}

describe('the practice', () => {
  test('by typing, to its debrief beside the planner’s run', async () => {
    const page = await browser.page(`${server.url}/practice`);
    expect(await overflow(page)).toBe(0);
    await pictures(page, 'start');
    await begin(page, 'motors-411');
    await type(page, 'outdoor air', 'return air', 'thermostat is calling', 'look at the fan', 'look at the compressor');
    await page.getByRole('heading', { name: 'Whom do you suspect?' }).waitFor();
    await type(page, 'two', 'hint');
    expect(await page.locator('.practice-made tbody tr').count()).toBeGreaterThan(2);
    expect(await accessFaults(page)).toEqual([]);
    await pictures(page, 'running');
    await page.setViewportSize(DESK);
    await type(page, 'ohms leg one to leg two');
    await stage(page, 'debrief');
    expect(await page.locator('.practice-stops [data-weight="harm"]').textContent()).toMatch(/meter on ohms/);
    expect(await page.locator('[data-count="harmful"] td').allTextContents()).toEqual(['1', '0']);
    expect(await page.locator('[data-run="planner"] [data-count]').count()).toBe(0);
    expect(Number(await page.locator('[data-run="planner"]').getAttribute('data-count'))).toBeGreaterThan(50);
    expect(await accessFaults(page)).toEqual([]);
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

  test('by touch alone, with probes on the drawing', async () => {
    const page = await browser.page(`${server.url}/practice?exercise=motors-411&hints=3`);
    await page.setViewportSize(PHONE);
    const tap = async (name: string | RegExp) => {
      await page
        .getByRole('button', { name, exact: typeof name === 'string' })
        .first()
        .click();
      await page.locator('main.practice[aria-busy="false"]').waitFor();
    };
    const open = (name: string) => page.locator('summary', { hasText: name }).click();
    await tap('Begin');
    await stage(page, 'running');
    await open('Clamp, thermometer, gauges');
    await tap('Outdoor air, temperature');
    await tap('Return air, temperature');
    await open('Power and call');
    await tap('Thermostat is calling for cooling');
    await open('Look at');
    await tap('Look: outdoor fan');
    await tap('Put a probe on leg one: L1');
    await page.getByRole('button', { name: 'Put a probe on ground: GND', exact: true }).click();
    expect(await page.locator('.practice-probes').textContent()).toBe('Probes: leg one and ground.');
    await tap('Read the meter');
    await tap('None yet');
    await tap('Live');
    expect(await page.locator('.practice-talk [data-by="meter"]').last().textContent()).toMatch(/volts/);
    // The same terminals as a table.
    await tap('Table');
    await tap('Put a probe on leg two');
    const small = await page.evaluate(() =>
      Math.min(
        ...[...document.querySelectorAll('.practice-keys button.key')]
          .filter((key) => key.checkVisibility())
          .map((key) => key.getBoundingClientRect().height),
      ),
    );
    // 20 mm on a phone whose CSS pixel is 1/6.05 mm, as on the technician's page.
    expect(small).toBeGreaterThanOrEqual(121);
    await page.getByRole('button', { name: 'Give up' }).click();
    await stage(page, 'debrief');
    await page.close();
  }, 180_000);

  test('refuses an address that sets nothing', async () => {
    const page = await browser.page(`${server.url}/practice?exercise=engines-7`);
    expect(await page.getByRole('alert').textContent()).toMatch(/No such family/);
    await page.close();
  });
});

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { PHONE, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Trainee } from './trainee.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: PHONE });
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

const talkOf = (page: Page) => page.locator('.practice-talk li').allTextContents();
/** Exercises of motors that this device knows of. */
async function exercisesDone(page: Page): Promise<string | null> {
  await page.goto(`${server.url}/practice`);
  return page.locator('tr[data-family="motors"] td').first().textContent();
}

describe('an exercise', () => {
  test('is one of its own in each tab', async () => {
    const [one, two] = [await browser.page('about:blank'), await browser.page('about:blank')];
    const [first, second] = [new Trainee(one), new Trainee(two)];
    await first.begin(server.url, 'motors-413');
    await second.begin(server.url, 'motors-414');
    await first.type('outdoor air', 'hint');
    await second.type('return air');
    await one.reload();
    await first.stage('running');
    expect((await talkOf(one)).join()).toMatch(/Outdoor air/);
    expect((await talkOf(two)).join()).not.toMatch(/You outdoor air/);
    for (const trainee of [first, second]) {
      await trainee.type('give up');
      await trainee.stage('debrief');
    }
    expect(Number(await exercisesDone(one))).toBe(2);
    expect(browser.errors).toEqual([]);
  }, 120_000);

  test('whose tab was copied is ended by both and counts once', async () => {
    const page = await browser.page('about:blank');
    const trainee = new Trainee(page);
    await trainee.begin(server.url, 'control-413');
    await trainee.type('outdoor air');
    // A page opened by another of the same origin begins with a copy of what its tab keeps (HTML standard, window open steps; from memory).
    const [copy] = await Promise.all([
      page.waitForEvent('popup'),
      page.evaluate(() => void open(location.href, '_blank')),
    ]);
    const second = new Trainee(copy);
    await second.stage('running');
    expect((await talkOf(copy)).join()).toMatch(/Outdoor air/);
    for (const one of [trainee, second]) {
      await one.type('give up');
      await one.stage('debrief');
    }
    await page.goto(`${server.url}/practice`);
    expect(await page.locator('tr[data-family="control"] td').first().textContent()).toBe('1');
    await copy.close();
    await page.close();
  }, 120_000);

  test('goes on where the clock of the device jumps', async () => {
    const page = await browser.page('about:blank');
    await page.addInitScript(() => {
      const real = Date.now.bind(Date);
      Object.assign(globalThis, { skewed: 0 });
      const now = () => real() + (globalThis as unknown as { skewed: number }).skewed;
      globalThis.Date = class extends Date {
        constructor(...given: []) {
          super(...((given.length === 0 ? [now()] : given) as []));
        }
        static override now = now;
      } as DateConstructor;
    });
    const trainee = new Trainee(page);
    const jump = (ms: number) => page.evaluate((by) => Object.assign(globalThis, { skewed: by }), ms);
    await trainee.begin(server.url, 'motors-415');
    await trainee.type('outdoor air');
    await jump(3 * 3_600_000);
    await trainee.type('return air');
    await jump(-26 * 3_600_000);
    await trainee.type('thermostat is calling', 'look at the fan');
    expect(await trainee.told('eyes')).toMatch(/fan/);
    // The day before its own beginning.
    await page.reload();
    await trainee.stage('running');
    await trainee.type('give up');
    await trainee.stage('debrief');
    expect(await page.locator('[data-run="you"]').textContent()).toMatch(/Return air/i);
    await page.close();
  }, 90_000);
});

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { overflow } from './look-over.ts';
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

const ARRIVED = ['outdoor air', 'return air', 'thermostat is calling', 'look at the fan', 'look at the compressor'];
const talkOf = (page: Page) => page.locator('.practice-talk li').allTextContents();
/** Exercises of motors that this device knows of. */
async function exercisesDone(page: Page): Promise<string | null> {
  await page.goto(`${server.url}/practice`);
  return page.locator('tr[data-family="motors"] td').first().textContent();
}

describe('an address that sets no exercise', () => {
  const WRONG: readonly (readonly [string, RegExp])[] = [
    ['exercise=engines-7', /"engines". No such family of faults. Use power/],
    ['exercise=motors', /"motors". Not an exercise. Use a family and a number/],
    ['exercise=motors-0', /Not the number of an exercise. Use a whole number from 1 to 99999/],
    ['exercise=motors-123456789012345678901', /Not the number of an exercise/],
    ['exercise=motors-4.5', /Not an exercise/],
    [`exercise=${encodeURIComponent('😀-1')}`, /Not an exercise/],
    [`exercise=${encodeURIComponent('<script>alert(1)</script>')}`, /"<script>alert\(1\)<\/script>". Not an exercise/],
    ['exercise=motors-411&minutes=soon', /"soon". Not a limit. Use a whole number of minutes from 1 to 999/],
    ['exercise=motors-411&hints=-3', /"-3". Not a limit/],
  ];

  test('is named with what to do, and another can be begun at once', async () => {
    const page = await browser.page('about:blank');
    for (const [address, sentence] of WRONG) {
      await page.goto(`${server.url}/practice?${address}`);
      expect(await page.getByRole('alert').textContent(), address).toMatch(sentence);
      expect(await page.getByRole('button', { name: 'Begin' }).isEnabled(), address).toBe(true);
      expect(await overflow(page), address).toBe(0);
    }
    await page.close();
  }, 60_000);
});

describe('an exercise', () => {
  test('takes lines of any kind as text, and goes on', async () => {
    const page = await browser.page('about:blank');
    const trainee = new Trainee(page);
    await trainee.begin(server.url, 'motors-411');
    const odd = [
      'leg one '.repeat(625),
      'مرحبا بالعالم',
      '😀 🔧 ⚡',
      '<img src=x onerror="document.title=1"><script>document.title=2</script>',
      '\u202etluaf eht\u202c',
      '0'.repeat(500),
    ];
    for (const line of odd) {
      await trainee.type(line);
      expect((await talkOf(page)).some((one) => one.includes(line.trim().slice(0, 60)))).toBe(true);
      expect(await overflow(page)).toBe(0);
    }
    expect(await page.title()).not.toMatch(/[12]/);
    await trainee.type('outdoor air');
    expect(await trainee.told('meter')).toMatch(/°F/);
    await trainee.type('give up');
    await trainee.stage('debrief');
    expect(await overflow(page)).toBe(0);
    await page.close();
  }, 90_000);

  test('outlasts a reload in the middle, another at its debrief, and counts once', async () => {
    const page = await browser.page('about:blank');
    const trainee = new Trainee(page);
    await trainee.begin(server.url, 'motors-412');
    await trainee.type(...ARRIVED, 'none yet', 'hint', 'wait 5 minutes');
    await trainee.press('Put a probe on leg one: L1');
    const before = { talk: await talkOf(page), made: await page.locator('.practice-made').textContent() };
    const head = await page.locator('.practice-head').textContent();
    await page.reload();
    await trainee.stage('running');
    expect(await page.locator('.practice-made').textContent()).toBe(before.made);
    expect(await page.locator('.practice-head').textContent()).toBe(head);
    expect(await page.locator('.practice-probes').textContent()).toMatch(/One probe on leg one/);
    const talk = await talkOf(page);
    expect(talk.slice(0, -1)).toEqual(before.talk);
    expect(talk.at(-1)).toMatch(/loaded anew/);
    await trainee.type('leg one to ground', 'none yet', 'live');
    await trainee.type('give up');
    await trainee.stage('debrief');
    const counts = await trainee.count('tests');
    await page.reload();
    await trainee.stage('debrief');
    expect(await trainee.count('tests')).toEqual(counts);
    await trainee.press('Another exercise');
    const done = Number(await exercisesDone(page));
    // Left on purpose, it does not come back.
    expect(await page.getByRole('button', { name: 'Begin' }).count()).toBe(1);
    expect(done).toBe(2);
    await page.close();
  }, 120_000);
});

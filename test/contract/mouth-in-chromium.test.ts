import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Prompt } from '../../client/speaking/mouth.ts';
import { ReadbackBrowser, scratch } from '../browser/readback-browser.ts';
import { mouthContract } from './mouth-contract.ts';
import type { MouthPage } from './page/mouth-page.ts';
import { type ServedPage, servePage } from './serve-page.ts';

declare global {
  var mouthPage: MouthPage;
}

let folder: Awaited<ReturnType<typeof scratch>>;
let served: ServedPage;
let browser: ReadbackBrowser;
let page: Page;

beforeAll(async () => {
  folder = await scratch();
  served = await servePage('mouth-page', join(folder.path, 'page'));
  browser = await ReadbackBrowser.open({
    profile: join(folder.path, 'profile'),
    args: ['--autoplay-policy=no-user-gesture-required'],
  });
  page = await open();
  await page.evaluate(() => mouthPage.make());
}, 180_000);
afterAll(async () => {
  await browser.close();
  served.close();
  await folder.remove();
});

async function open(): Promise<Page> {
  const opened = await browser.page(served.url);
  await opened.waitForFunction(() => 'mouthPage' in globalThis);
  return opened;
}

describe('the offline voice in a real browser', { timeout: 60_000 }, () => {
  mouthContract(async () => ({
    mouth: {
      speak: async (prompt: Prompt) => {
        await page.evaluate((what) => mouthPage.speak(what), prompt);
        await page.waitForFunction(() => mouthPage.outcome !== undefined, undefined, { timeout: 30_000 });
        return page.evaluate(() => mouthPage.outcome as 'spoken' | 'cut');
      },
      hush: (even: boolean) => void page.evaluate((all) => mouthPage.mouth?.hush(all), even),
    },
    pass: (ms: number) => new Promise((resolve) => setTimeout(resolve, ms)),
    sounds: true,
    holdsCautions: true,
  }));

  test('sounds as long as a sentence takes, and less when it is to be faster', async () => {
    const words = 'Leg two to ground, the meter on alternating volts, both probes on.';
    const plain = await page.evaluate((text) => mouthPage.sounding(text), words);
    await page.evaluate(() => mouthPage.make(1.5));
    const fast = await page.evaluate((text) => mouthPage.sounding(text), words);
    await page.evaluate(() => mouthPage.make(1));
    // 12 words: nobody says them in under two seconds.
    expect(plain).toBeGreaterThan(2_000);
    expect(fast).toBeLessThan(plain * 0.85);
  });

  test('is fetched once, and kept on the device for the next page, without the server', async () => {
    const before = browser.requests.filter((url) => url.includes('/voice/')).length;
    expect(before).toBe(1);
    const again = await open();
    await again.evaluate(() => mouthPage.make());
    expect(browser.requests.filter((url) => url.includes('/voice/'))).toHaveLength(1);
    await again.close();
  });
});

test('the three earcons differ in rhythm: how often each begins, and how long it sounds', async () => {
  const heard = await page.evaluate(async () => {
    const shapes: Record<string, number[]> = {};
    for (const name of mouthPage.earcons) shapes[name] = await mouthPage.earcon(name);
    return shapes;
  });
  const shape = (levels: readonly number[] = []) => {
    const loud = levels.map((level) => level > 0.02);
    return {
      begins: loud.filter((on, step) => on && loud[step - 1] !== true).length,
      steps: loud.filter(Boolean).length,
    };
  };
  expect(shape(heard['ready']).begins).toBe(1);
  expect(shape(heard['logged']).begins).toBe(2);
  expect(shape(heard['asked']).begins).toBe(3);
  // All are over before anybody would answer.
  for (const name of ['ready', 'logged', 'asked']) expect(shape(heard[name]).steps, name).toBeLessThan(25);
});

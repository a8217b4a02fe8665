import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Ear } from '../../client/listening/ear.ts';
import { microphoneSound } from '../browser/microphone-sound.ts';
import { ReadbackBrowser, scratch } from '../browser/readback-browser.ts';
import { LONG } from '../how-much.ts';
import { earContract, earDelivers } from './ear-contract.ts';
import type { EarPage } from './page/ear-page.ts';
import { type ServedPage, servePage } from './serve-page.ts';

declare global {
  var earPage: EarPage;
}

/** Only against hanging: two sentences take 13 s on two slow cores. */
const HEARD_WITHIN_MS = 60_000;

let folder: Awaited<ReturnType<typeof scratch>>;
let served: ServedPage;
let browser: ReadbackBrowser | undefined;

beforeAll(async () => {
  folder = await scratch();
  served = await servePage('ear-page', join(folder.path, 'page'));
}, 180_000);
afterEach(async () => {
  await browser?.close();
  browser = undefined;
});
afterAll(async () => {
  served.close();
  await folder.remove();
});

async function openPage(kind: 'offline' | 'browser', sound?: string): Promise<Page> {
  browser = await ReadbackBrowser.open({
    profile: join(folder.path, `profile-${crypto.randomUUID()}`),
    ...(sound !== undefined && { sound }),
  });
  const page = await browser.page(served.url);
  await page.waitForFunction(() => 'earPage' in globalThis);
  await page.evaluate((which) => earPage.make(which), kind);
  return page;
}

/** An ear in a page, as an ear out here. What the page delivered is fetched by and by, in order. */
function earIn(
  page: Page,
  kind: Ear['kind'],
): { readonly ear: Ear; hear(sentences: readonly string[]): Promise<void> } {
  let callbacks: Parameters<Ear['start']>[0] | undefined;
  let taken = 0;
  let toldFaults = 0;
  const take = async () => {
    const all = await page.evaluate(() => ({ utterances: earPage.utterances, faults: earPage.faults }));
    for (const utterance of all.utterances.slice(taken)) callbacks?.onUtterance(utterance);
    for (const [fault, detail] of all.faults.slice(toldFaults)) callbacks?.onFault(fault, detail);
    taken = all.utterances.length;
    toldFaults = all.faults.length;
  };
  return {
    ear: {
      kind,
      start: async (given) => {
        callbacks = given;
        await page.evaluate(() => earPage.start());
        await take();
      },
      expect: (expectation) => void page.evaluate((what) => earPage.ear?.expect(what), expectation),
      stop: () => page.evaluate(() => earPage.ear?.stop()),
    },
    hear: async (sentences) => {
      const until = taken + sentences.length;
      await page.waitForFunction((count) => earPage.utterances.length >= count, until, { timeout: HEARD_WITHIN_MS });
      await take();
    },
  };
}

describe('the device’s microphone in a real browser', { timeout: 120_000 }, () => {
  (LONG ? earContract : earDelivers)(async () => {
    const sound = await microphoneSound(join(folder.path, 'said.wav'), [
      { id: '09-leg-one', words: 'leg one to ground one eighteen' },
      { id: '25-why', words: 'tell me why' },
    ]);
    return earIn(await openPage('offline', sound.path), 'offline');
  });
});

describe('the browser’s recogniser in a real browser that has no service behind it', () => {
  test('fails without a word of the browser’s, and is found out', async () => {
    const page = await openPage('browser');
    expect(
      await page.evaluate(() => 'SpeechRecognition' in globalThis || 'webkitSpeechRecognition' in globalThis),
    ).toBe(true);
    await page.evaluate(() => earPage.start());
    const [[fault, sentence] = []] = await page.evaluate(() => earPage.faults);
    expect(['recogniser-silent', 'recogniser-unreachable', 'recogniser-refused']).toContain(fault);
    expect(sentence).toContain('choose the offline one');
    expect(await page.evaluate(() => earPage.ear?.state().ear)).toBe('failed');
  });
});

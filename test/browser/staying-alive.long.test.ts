import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

interface Kept {
  locks: WakeLockSentinel[];
  streams: MediaStream[];
  contexts: AudioContext[];
  /** While it is set the browser refuses the microphone by that name. */
  refuse: string | undefined;
}

declare global {
  var kept: Kept;
}

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let technician: Technician;
let page: Page;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  const sound = await spokenSound(`${folder.path}/hum.wav`, [60]);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
  page = await browser.page('about:blank');
  // A headless browser keeps no screen on unless it is told that it may.
  const session = await page.context().newCDPSession(page);
  await session.send('Browser.grantPermissions', {
    permissions: ['wakeLockScreen', 'audioCapture'],
    origin: server.url,
  });
  await page.addInitScript(keepParts);
  await page.goto(server.url);
  technician = new Technician(page);
  await technician.openVisit('Staying alive', 'does not cool');
  await page.getByRole('button', { name: 'ear off' }).click();
  await listening();
});
afterEach(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** Keeps hold of the real parts that the page gets from the browser, so that a test can take them away as it would. */
function keepParts(): void {
  globalThis.kept = { locks: [], streams: [], contexts: [], refuse: undefined };
  const request = navigator.wakeLock.request.bind(navigator.wakeLock);
  navigator.wakeLock.request = async (type) => {
    const lock = await request(type);
    kept.locks.push(lock);
    return lock;
  };
  const open = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (wanted) => {
    if (kept.refuse !== undefined) throw new DOMException('refused', kept.refuse);
    const stream = await open(wanted);
    kept.streams.push(stream);
    return stream;
  };
  const Real = globalThis.AudioContext;
  globalThis.AudioContext = class extends Real {
    constructor(options?: AudioContextOptions) {
      super(options);
      // The microphone's alone asks for this.
      if (options?.latencyHint === 'interactive') kept.contexts.push(this);
    }
  };
}

const listening = () => page.locator('[data-ear="listening"]').waitFor({ timeout: 40_000 });
const failed = () => page.locator('[data-ear="failed"]').waitFor({ timeout: 20_000 });

async function interruptions(): Promise<readonly string[]> {
  await technician.settled();
  await technician.sent();
  const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
  return folded.interruptions.map(({ sentence }) => sentence);
}

const GAP = /^Listening was off for \d+ seconds\. Listening again\.$/;

describe('the ear comes back by itself, and the gap is said and logged', () => {
  test('when the microphone is unplugged and another is there', async () => {
    await page.evaluate(() => kept.streams.at(-1)?.getAudioTracks()[0]?.dispatchEvent(new Event('ended')));
    await page.waitForFunction(() => kept.streams.length === 2, undefined, { timeout: 20_000 });
    await listening();
    expect(await interruptions()).toEqual([
      expect.stringContaining('The microphone is gone'),
      expect.stringMatching(GAP),
    ]);
    expect(await technician.said()).toMatch(GAP);
    expect(
      await page.evaluate(() => kept.streams[0]?.getTracks().every(({ readyState }) => readyState === 'ended')),
    ).toBe(true);
  }, 90_000);

  test('when it is unplugged and the next one comes later', async () => {
    await page.evaluate(() => {
      kept.refuse = 'NotFoundError';
      kept.streams.at(-1)?.getAudioTracks()[0]?.dispatchEvent(new Event('ended'));
    });
    await page.waitForFunction(() =>
      document.querySelector('[data-ear-fault]')?.textContent?.startsWith('No microphone'),
    );
    await page.evaluate(() => {
      kept.refuse = undefined;
      navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    });
    await listening();
    expect((await interruptions()).at(-1)).toMatch(GAP);
  }, 90_000);

  test('when the recogniser’s thread breaks down; one that does so again and again is given up', async () => {
    const crash = async () => {
      const worker = page.workers().find((one) => one.url().includes('decoder-worker'));
      await worker?.evaluate(() => {
        setTimeout(() => {
          throw new Error('broke down');
        });
      });
    };
    for (let count = 1; count <= 3; count += 1) {
      await crash();
      await page.locator('[data-ear="starting"]').waitFor({ timeout: 10_000 });
      await listening();
    }
    await crash();
    await failed();
    const told = await interruptions();
    expect(told.filter((sentence) => GAP.test(sentence))).toHaveLength(3);
    expect(told.at(-1)).toMatch(/^The recogniser could not be loaded/);
    await technician.type('outdoor air ninety four degrees');
    expect(await technician.heardCount()).toBe(1);
  }, 120_000);

  test('when the sound is suspended: it is asked for again at once', async () => {
    await page.evaluate(() => kept.contexts.at(-1)?.suspend());
    await page.waitForFunction(() => kept.contexts.at(-1)?.state === 'running');
    await page.waitForTimeout(2_500);
    expect(await page.locator('[data-ear="listening"]').count()).toBe(1);
    expect(await interruptions()).toEqual([]);
  }, 90_000);

  test('when another program holds the sound for a while, as a call or a locked screen does', async () => {
    await page.evaluate(async () => {
      const context = kept.contexts.at(-1);
      if (context === undefined) return;
      Object.assign(context, { resume: () => Promise.reject(new DOMException('held', 'InvalidStateError')) });
      await context.suspend();
    });
    await failed();
    expect(await page.locator('[data-ear-fault]').textContent()).toMatch(/^Nothing comes from the microphone/);
    await picture(page, 'visit-no-sound');
    await page.evaluate(() => {
      // What the page itself had is given back, and the page comes to the front.
      Reflect.deleteProperty(kept.contexts.at(-1) ?? {}, 'resume');
      document.dispatchEvent(new Event('visibilitychange'));
    });
    await listening();
    expect(await interruptions()).toEqual([expect.stringMatching(/^Nothing comes/), expect.stringMatching(GAP)]);
  }, 90_000);
});

test('the screen is kept on, and again after the browser let it go', async () => {
  await page.waitForFunction(() => kept.locks.length === 1);
  await page.evaluate(() => kept.locks[0]?.release());
  await page.waitForFunction(() => kept.locks.length === 2 && kept.locks[1]?.released === false);
}, 60_000);

import { appendFileSync, readdirSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium } from '../browser/find-chromium.ts';
import { tries } from '../how-much.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { scratchFolder } from '../server/built-server.ts';
import type { LogPage } from './page/log-page.ts';

declare global {
  var page: LogPage;
}

const scratch = scratchFolder();
let server: Server;
let url: string;
let contexts = 0;
let context: BrowserContext;
beforeAll(async () => {
  const script = await bundlePage();
  server = createServer((request, response) => {
    const isScript = request.url === '/page.js';
    response.setHeader('Content-Type', isScript ? 'text/javascript' : 'text/html');
    response.end(isScript ? script : '<!doctype html><script type="module" src="/page.js"></script>');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  context = await openBrowser();
}, 180_000);
afterAll(async () => {
  await context.close();
  server.close();
  scratch.remove();
});

async function bundlePage(): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: 'error',
    root: fileURLToPath(new URL('.', import.meta.url)),
    build: { write: false, minify: false, lib: { entry: 'page/log-page.ts', formats: ['es'] } },
  });
  const [bundle] = Array.isArray(result) ? result : [result];
  if (bundle === undefined || !('output' in bundle)) throw new Error('the page was not bundled');
  return bundle.output[0].code;
}

/** A browser with a profile of its own on the disk, or one that is there already. */
async function openBrowser(profile = `${scratch.path}/profile-${++contexts}`): Promise<BrowserContext> {
  const { path, environment } = await findChromium();
  return chromium.launchPersistentContext(profile, {
    executablePath: path,
    env: { ...process.env, ...environment },
    args: ['--no-sandbox', '--disable-gpu'],
    chromiumSandbox: false,
  });
}

async function openPage(browser: BrowserContext = context): Promise<Page> {
  const opened = await browser.newPage();
  await opened.goto(url);
  await opened.waitForFunction(() => 'page' in globalThis);
  return opened;
}

/** A page whose record is empty. */
async function freshPage(): Promise<Page> {
  const opened = await openPage();
  await opened.evaluate(() => page.empty());
  return opened;
}

describe('the browser’s log', () => {
  test('does all that every log must do', async () => {
    const opened = await openPage();
    const names = await opened.evaluate(() => page.contractNames());
    expect(names.length).toBeGreaterThan(8);
    for (const name of names) {
      expect(await opened.evaluate((each) => page.runContract(each), name), name).toBe('held');
    }
    await opened.close();
  });

  test.each(['before', 'during'] as const)(
    'is opened again where its connection is severed %s a write',
    async (how) => {
      const opened = await freshPage();
      expect(await opened.evaluate((each) => page.appendOverSevered(each), how)).toBe(2);
      expect(await opened.evaluate(() => page.check())).toEqual({ intact: true, count: 2 });
      await opened.close();
    },
  );

  test('two views of one stream: the one that is behind is refused until it has looked', async () => {
    const opened = await freshPage();
    expect(await opened.evaluate(() => page.twoViewsOfOneStream())).toEqual({
      code: 'log-busy',
      kept: ['one', 'after looking'],
    });
    await opened.close();
  });

  test('knows the newest epoch of its visit and device', async () => {
    const opened = await freshPage();
    expect(await opened.evaluate(() => page.newestEpochs())).toEqual([undefined, 1, 3, 3, undefined]);
    await opened.close();
  });

  test('written by a newer page, it says so', async () => {
    const opened = await freshPage();
    expect(await opened.evaluate(() => page.openNewer())).toBe('log-newer');
    await opened.close();
  });

  test('in a full store stops loudly, keeps what it had, and goes on once there is room', async () => {
    // A browser of its own: one that has looked at its quota before trusts that look for half a minute.
    const browser = await openBrowser();
    const opened = await openPage(browser);
    const devtools = await browser.newCDPSession(opened);
    await devtools.send('Storage.overrideQuotaForOrigin', { origin: url, quotaSize: 400_000 });
    const full = await opened.evaluate(() => page.fill('x'.repeat(30_000)));
    expect(full.code).toBe('log-full');
    expect(full.message).toContain('NOT saved');
    expect(full.before).toBeGreaterThan(3);
    expect(full.after).toBe(full.before);
    expect(await opened.evaluate(() => page.check())).toEqual({ intact: true, count: full.before });
    await devtools.send('Storage.overrideQuotaForOrigin', { origin: url });
    expect(await opened.evaluate(() => page.append(['{"room":"again"}']))).toBe(full.before + 1);
    await browser.close();
  });
});

describe('several tabs', () => {
  test('have one writer: the next takes its turn when the first lets go, closes or crashes', async () => {
    const [a, b, c] = [await openPage(), await openPage(), await openPage()];
    const parts = (tab: Page) => tab.evaluate(() => page.parts);
    const becomes = (tab: Page) => tab.waitForFunction(() => page.parts.at(-1) === 'writing');
    for (const tab of [a, b, c]) {
      await tab.evaluate(() => page.claim('v-tabs'));
      await tab.waitForFunction(() => page.parts.length > 0);
    }
    expect([await parts(a), await parts(b), await parts(c)]).toEqual([['writing'], ['waiting'], ['waiting']]);
    await a.evaluate(() => page.release());
    await becomes(b);
    expect(await parts(c)).toEqual(['waiting']);
    await a.evaluate(() => page.claim('v-tabs'));
    await b.close();
    await becomes(c);
    await c.goto('chrome://crash').catch(() => undefined);
    await becomes(a);
    await a.close();
  });

  test('that only look on see what the writer writes', async () => {
    const [writer, follower] = [await freshPage(), await openPage()];
    await follower.evaluate(() => page.follow());
    await writer.evaluate(() => page.appendAndTell(['one', 'two']));
    await follower.waitForFunction(() => page.seen.length === 2);
    await writer.evaluate(() => page.appendAndTell(['three']));
    await follower.waitForFunction(() => page.seen.length === 3);
    expect(await follower.evaluate(() => page.seen)).toEqual(['one', 'two', 'three']);
    await writer.close();
    await follower.close();
  });
});

describe('a browser that is killed while it writes', () => {
  test('has kept every event it said was kept, and its chain holds', async () => {
    const profile = `${scratch.path}/profile-killed`;
    let told = 0;
    const kills = tries(3, 200);
    for (let round = 1; round <= kills; round += 1) {
      const browser = await openBrowser(profile);
      const opened = await openPage(browser);
      const kill = await killerOf(browser);
      const { count } = await opened.evaluate(() => page.check());
      expect(count).toBeGreaterThanOrEqual(told);
      // A few, so that 200 kills take minutes: what is killed is the writing of the next one.
      const enough = told + 3 + ((round * 7) % 17);
      const reached = new Promise<void>((resolve) => {
        void opened.exposeFunction('tell', (seq: number) => {
          told = seq;
          if (seq > enough) resolve();
        });
      });
      await opened.waitForFunction(() => 'tell' in globalThis);
      void opened
        .evaluate(() => page.appendWithoutEnd((globalThis as unknown as { tell(seq: number): void }).tell))
        .catch(() => undefined);
      await reached;
      await kill();
    }
    const browser = await openBrowser(profile);
    const { intact, count } = await (await openPage(browser)).evaluate(() => page.check());
    expect(intact).toBe(true);
    tellFigure('kills of the browser', kills);
    tellFigure('entries kept before a kill', told);
    tellFigure('of these gone', Math.max(0, told - count));
    expect(count).toBeGreaterThanOrEqual(told);
    await browser.close();
  }, 3_600_000);
});

describe('a browser that was killed in the middle of a write', () => {
  /** Seven bytes that announce a record of 75, of which nothing follows: what a kill between two writes leaves. */
  const TORN_RECORD = Buffer.from('73bf0f854b0001', 'hex');

  test('keeps the record through the next crash, although its store writes on behind the torn one', async () => {
    const profile = `${scratch.path}/profile-torn`;
    for (const session of [1, 2]) {
      const browser = await openBrowser(profile);
      const opened = await openPage(browser);
      expect(await opened.evaluate((n) => page.appendSettled([`{"session":${n}}`]), session)).toBe(session);
      await killBrowser(browser);
      if (session === 1) appendFileSync(latestLog(profile), TORN_RECORD);
    }
    const browser = await openBrowser(profile);
    const opened = await openPage(browser);
    expect(await opened.evaluate(() => page.check())).toEqual({ intact: true, count: 2 });
    await browser.close();
  });

  function latestLog(profile: string): string {
    const folder = join(profile, 'Default/IndexedDB');
    const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.log'));
    return join(folder, names.sort().at(-1) as string);
  }
});

/** Ends the browser's own process without a word (SIGKILL), as a crash or an empty battery would. */
async function killBrowser(browser: BrowserContext): Promise<void> {
  await (await killerOf(browser))();
}

/** Knows the process beforehand, so that the kill comes at once. */
async function killerOf(browser: BrowserContext): Promise<() => Promise<void>> {
  const devtools = await browser.browser()?.newBrowserCDPSession();
  const { processInfo } = (await devtools?.send('SystemInfo.getProcessInfo')) ?? { processInfo: [] };
  const main = processInfo.find(({ type }) => type === 'browser');
  if (main === undefined) throw new Error('the browser has no process');
  return async () => {
    const closed = new Promise((resolve) => browser.once('close', resolve));
    process.kill(main.id, 'SIGKILL');
    await closed;
  };
}

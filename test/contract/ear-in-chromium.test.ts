import { existsSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Ear } from '../../client/listening/ear.ts';
import { MODEL_FILES, modelFiles } from '../../client/screens/node/model-files.ts';
import { microphoneSound } from '../browser/microphone-sound.ts';
import { ReadbackBrowser, scratch } from '../browser/readback-browser.ts';
import { earContract } from './ear-contract.ts';
import type { EarPage } from './page/ear-page.ts';

declare global {
  var earPage: EarPage;
}

const TYPES: Readonly<Record<string, string>> = { '.js': 'text/javascript', '.wasm': 'application/wasm' };
const HEARD_WITHIN_MS = 20_000;

let folder: Awaited<ReturnType<typeof scratch>>;
let server: Server;
let url: string;
let browser: ReadbackBrowser | undefined;

beforeAll(async () => {
  folder = await scratch();
  const built = join(folder.path, 'page');
  await buildPage(built);
  server = createServer((request, response) => {
    const path = join(built, decodeURIComponent(request.url ?? '/'));
    const isPage = request.url === '/';
    if (!isPage && !existsSync(path)) return response.writeHead(404).end();
    response.setHeader('Content-Type', isPage ? 'text/html' : (TYPES[extname(path)] ?? 'application/octet-stream'));
    return response.end(isPage ? '<!doctype html><script type="module" src="/page.js"></script>' : readFileSync(path));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}, 180_000);
afterEach(async () => {
  await browser?.close();
  browser = undefined;
});
afterAll(async () => {
  server.close();
  await folder.remove();
});

/** The ears as the program's own pages have them: bundled, with their workers and the model beside them. */
async function buildPage(outDir: string): Promise<void> {
  const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  await build({
    configFile: false,
    logLevel: 'error',
    root: here('page'),
    build: {
      outDir,
      assetsInlineLimit: 0,
      rolldownOptions: { input: here('page/ear-page.ts'), output: { entryFileNames: 'page.js' } },
    },
    worker: { format: 'es' },
    resolve: { alias: { 'blob-polyfill': here('../../client/listening/worker/native-blob.ts') } },
    define: {
      __MODEL_CACHE__: JSON.stringify('readback-model-contract'),
      __MODEL_FILES__: JSON.stringify(MODEL_FILES),
    },
    plugins: [modelFiles(here('../../node_modules/soundswallower/model/en-us'))],
  });
}

async function openPage(kind: 'offline' | 'browser', sound?: string): Promise<Page> {
  browser = await ReadbackBrowser.open({
    profile: join(folder.path, `profile-${crypto.randomUUID()}`),
    ...(sound !== undefined && { sound }),
  });
  const page = await browser.page(url);
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
  earContract(async () => {
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

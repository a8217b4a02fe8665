import { createServer, type Server } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults } from './look-over.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

const WAKE_HOST = 'kmp1.picovoice.net';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let elsewhere: Server;
let proxy: string;
let browser: ReadbackBrowser;
/** What the browser asked of any address but this machine's. */
let strayed: string[];

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  elsewhere = createServer();
  elsewhere.on('connect', (request, socket: Socket) => {
    strayed.push(request.url ?? '');
    socket.end('HTTP/1.1 502 Bad Gateway\r\n\r\n');
  });
  await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve));
  proxy = `http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}`;
});
beforeEach(() => {
  strayed = [];
});
afterEach(async () => {
  await browser.close();
});
afterAll(async () => {
  elsewhere.close();
  await server.stop();
  await folder.remove();
});

async function openVisit(sound?: string): Promise<Technician> {
  browser = await ReadbackBrowser.open({
    profile: `${folder.path}/profile-${crypto.randomUUID()}`,
    args: [`--proxy-server=${proxy}`, '--proxy-bypass-list=127.0.0.1'],
    ...(sound !== undefined && { sound }),
  });
  const page = await browser.page('about:blank');
  await page.addInitScript(keepMediaHandlers);
  await page.goto(server.url);
  const technician = new Technician(page);
  await technician.openVisit('Attention', 'does not cool');
  return technician;
}

/** No test can press a headset's button in a headless browser: what the page gives to the browser for it is kept. */
function keepMediaHandlers(): void {
  const kept = new Map<string, (() => void) | null>();
  const session = navigator.mediaSession;
  const set = session.setActionHandler.bind(session);
  session.setActionHandler = (action, handler) => {
    kept.set(action, handler as (() => void) | null);
    set(action, handler);
  };
  Object.assign(globalThis, { mediaHandlers: kept });
}

async function pressHeadset(page: Page): Promise<void> {
  await page.evaluate(() => {
    const { mediaHandlers } = globalThis as unknown as { mediaHandlers: Map<string, () => void> };
    mediaHandlers.get('pause')?.();
  });
}

async function choose(page: Page, label: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('button', { name: 'Sound', exact: true }).click();
  await page.getByLabel(label).check();
}

async function keep(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Keep' }).click();
  await page.locator('dialog').waitFor({ state: 'detached' });
}

async function switchEarOn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"]').waitFor({ timeout: 30_000 });
}

const attending = (page: Page, on: boolean) => page.locator(`[data-attending="${on}"]`).waitFor({ timeout: 10_000 });

describe('hold to talk', () => {
  test('what is said counts only while the key is held, and “stop” at any time', async () => {
    const sound = await spokenSound(`${folder.path}/held.wav`, [
      ...[7, 'tell me why', 4, 'stop', 4, 'outdoor air ninety four degrees', 4, 'tell me why', 30],
    ]);
    const technician = await openVisit(sound);
    const { page } = technician;
    await choose(page, /while the key/);
    await picture(page, 'sound-settings');
    expect(await accessFaults(page)).toEqual([]);
    await keep(page);
    await switchEarOn(page);
    await picture(page, 'visit-hold-to-talk');
    expect(await accessFaults(page)).toEqual([]);
    const heard = page.locator('[data-heard]');
    // The first sentence passes; "stop" is heard without the key.
    await page.locator('[data-ear="hearing"]').waitFor({ timeout: 20_000 });
    await page.waitForFunction(() => document.querySelector('[data-heard]')?.textContent === 'stop', undefined, {
      timeout: 20_000,
    });
    expect(await technician.heardCount()).toBe(1);
    await page.locator('[data-talk-key]').hover();
    await page.mouse.down();
    await attending(page, true);
    await page.waitForFunction(
      () => document.querySelector('[data-heard]')?.textContent?.includes('ninety'),
      undefined,
      {
        timeout: 20_000,
      },
    );
    await page.mouse.up();
    await attending(page, false);
    // The sentence after it passes too.
    await page.locator('[data-ear="hearing"]').waitFor({ timeout: 20_000 });
    await page.locator('[data-ear="listening"]').waitFor({ timeout: 20_000 });
    await technician.settled();
    expect(await heard.textContent()).toContain('ninety four');
    expect(await technician.heardCount()).toBe(2);
  }, 120_000);

  test('by the space bar, and by a headset’s button for one sentence', async () => {
    const { page } = await openVisit(await spokenSound(`${folder.path}/quiet.wav`, [60]));
    await choose(page, /while the key/);
    await keep(page);
    await switchEarOn(page);
    await attending(page, false);
    await page.locator('h1').evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.down(' ');
    await attending(page, true);
    await page.keyboard.up(' ');
    await attending(page, false);
    await pressHeadset(page);
    await attending(page, true);
    await pressHeadset(page);
    await attending(page, false);
    await pressHeadset(page);
    await attending(page, true);
    // Nothing is said: it gives up by itself.
    await attending(page, false);
    // In a field the space bar writes.
    await page.locator('#type-line').focus();
    await page.keyboard.press(' ');
    expect(await page.locator('#type-line').inputValue()).toBe(' ');
  }, 90_000);
});

describe('the wake word', () => {
  const file = (name: string) => ({ name, mimeType: 'application/octet-stream', buffer: Buffer.from('not a model') });
  const notice = (page: Page) => page.locator('[data-ear-fault]');

  test('without its files is not used: one line says so, and it listens always instead', async () => {
    const { page } = await openVisit();
    await choose(page, /wake word/);
    await page.getByLabel('Access key').fill('anything');
    await keep(page);
    await switchEarOn(page);
    await notice(page).waitFor();
    expect(await notice(page).textContent()).toBe(
      'The wake word cannot be used (its files are missing). Listening always instead.',
    );
    await attending(page, true);
    expect(strayed.filter((url) => url.includes('picovoice'))).toEqual([]);
  }, 60_000);

  test.each([
    ['missing', ''],
    ['that is none', 'wrong key'],
    ['of the right form that nobody gave out', Buffer.alloc(40, 7).toString('base64')],
  ])(
    'with a key %s shows the engine’s own error in one line and listens always instead',
    async (_, key) => {
      const { page } = await openVisit();
      await choose(page, /wake word/);
      await page.getByLabel('Access key').fill(key === '' ? 'first' : key);
      await page.getByLabel('Model file').setInputFiles(file('own.pv'));
      await page.getByLabel('Keyword file').setInputFiles(file('own.ppn'));
      await picture(page, 'sound-wake-word');
      await keep(page);
      if (key === '') {
        // The key is taken out of the settings behind the page's back; the files stay.
        await page.evaluate(() => {
          const kept = JSON.parse(localStorage.getItem('readback.sound') ?? '{}');
          localStorage.setItem('readback.sound', JSON.stringify({ ...kept, wakeKey: '' }));
        });
      }
      await switchEarOn(page);
      await notice(page).waitFor({ timeout: 30_000 });
      expect(await notice(page).textContent()).toMatch(
        /^The wake word cannot be used \(Porcupine\w*Error: .+\)\. Listening always instead\.$/,
      );
      await attending(page, true);
      await picture(page, 'visit-wake-word-failed');
    },
    90_000,
  );

  test('its program may speak to its maker’s host only while a key is set; no page ever may', async () => {
    const policyOf = async (path: string, cookie: string) => {
      const response = await fetch(server.url + path, { headers: { cookie } });
      return /connect-src ([^;]*)/.exec(response.headers.get('content-security-policy') ?? '')?.[1];
    };
    const { page } = await openVisit();
    const program = await page.evaluate(async () => {
      const entry = [...document.scripts].map(({ src }) => src).find((src) => src.includes('/assets/')) ?? '';
      const seen = new Set<string>();
      const queue = [entry];
      for (let url = queue.shift(); url !== undefined; url = queue.shift()) {
        if (seen.has(url)) continue;
        seen.add(url);
        const text = await (await fetch(url)).text();
        const wake = /wake\/wake-worker-[\w-]+\.js/.exec(text)?.[0];
        if (wake !== undefined) return `/${wake}`;
        for (const [name] of text.matchAll(/[\w-]+\.js/g)) queue.push(`/assets/${name}`);
      }
      return '';
    });
    expect(program).toMatch(/^\/wake\//);
    expect(await policyOf(program, '')).toBe("'self'");
    expect(await policyOf(program, 'readback-wake=off')).toBe("'self'");
    expect(await policyOf(program, 'other=1; readback-wake=on')).toBe(`'self' https://${WAKE_HOST}`);
    expect(await policyOf('/', 'readback-wake=on')).toBe("'self'");
    expect((await fetch(server.url + program)).headers.get('cache-control')).toBe('no-store');

    /** Starts the program as the page does and lets it ask; a browser tells by an error whether it was let out. */
    const asks = () =>
      page.evaluate(
        ([path, host]) =>
          new Promise<string>((resolve) => {
            const worker = new Worker(path ?? '', { type: 'module' });
            Object.assign(globalThis, { wakeProbe: worker });
            setTimeout(() => resolve(host ?? ''), 1_500);
          }),
        [program, WAKE_HOST],
      );
    const askFromWorker = async () => {
      await asks();
      const worker = page.workers().find((one) => one.url().includes('/wake/'));
      await worker?.evaluate((host) => fetch(`https://${host}/`).catch(() => undefined), WAKE_HOST);
      await page.evaluate(() => (globalThis as unknown as { wakeProbe: Worker }).wakeProbe.terminate());
    };
    await askFromWorker();
    expect(strayed.filter((url) => url.includes(WAKE_HOST))).toEqual([]);
    await choose(page, /wake word/);
    await page.getByLabel('Access key').fill('some key');
    await keep(page);
    await askFromWorker();
    expect(strayed.filter((url) => url.includes(WAKE_HOST)).length).toBeGreaterThan(0);
    // The page itself is not let out even then.
    strayed = [];
    await page.evaluate((host) => fetch(`https://${host}/`).catch(() => undefined), WAKE_HOST);
    expect(strayed.filter((url) => url.includes(WAKE_HOST))).toEqual([]);
    // The key is taken away, and the permission with it.
    await choose(page, /wake word/);
    await page.getByLabel('Access key').fill('');
    await keep(page);
    await askFromWorker();
    expect(strayed.filter((url) => url.includes(WAKE_HOST))).toEqual([]);
  }, 90_000);
});

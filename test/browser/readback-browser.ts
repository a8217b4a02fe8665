import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { type LocalServer, startLocalServer } from '../../client/record/node/local-server.ts';
import { findChromium } from './find-chromium.ts';
import { PROJECT_ROOT } from './project-root.ts';

const PROGRAM = join(PROJECT_ROOT, '.build/server/main.js');
const PICTURES = join(PROJECT_ROOT, 'test-results');

export const PHONE = { width: 390, height: 844 } as const;
/** The narrowest phone that is still about. */
export const SMALL_PHONE = { width: 360, height: 740 } as const;
export const DESK = { width: 1280, height: 800 } as const;

/** A folder of its own, gone after the test. */
export async function scratch(): Promise<{ readonly path: string; remove(): Promise<void> }> {
  const path = await mkdtemp(join(tmpdir(), 'readback-browser-'));
  return { path, remove: () => rm(path, { recursive: true, force: true, maxRetries: 5 }) };
}

/** The server as users run it, with the pages as they are built. */
export async function startServer(
  dataDir: string,
  port = 0,
  environment: Readonly<Record<string, string>> = {},
): Promise<LocalServer> {
  const pages = join(PROJECT_ROOT, '.build/web/index.html');
  if (!existsSync(pages)) throw new Error('the pages are not built: run "npm run build && npm run build:web" first');
  return startLocalServer({ program: PROGRAM, dataDir, port, environment });
}

export interface BrowserOptions {
  readonly profile: string;
  /** A WAV file that the microphone hears from its opening on. Without one the microphone hears the browser's beeps. */
  readonly sound?: string;
  readonly microphone?: 'allowed' | 'refused' | 'absent';
  readonly size?: { readonly width: number; readonly height: number };
  readonly args?: readonly string[];
  /** A touch screen instead of a mouse. */
  readonly touch?: boolean;
  /** Pages are silent unless it is asked for: what is spoken would be heard by the microphone's own rules. */
  readonly voice?: 'spoken' | 'silent';
}

/** A real browser with a profile on the disk, and all that it asked of the network and complained about. */
export class ReadbackBrowser {
  readonly context: BrowserContext;
  /** Addresses asked for, other than data: and blob:. */
  readonly requests: string[] = [];
  readonly errors: string[] = [];

  private constructor(context: BrowserContext) {
    this.context = context;
    context.on('request', (request) => {
      if (/^(https?|wss?):/.test(request.url())) this.requests.push(request.url());
    });
    context.on('weberror', (error) => this.errors.push(String(error.error())));
    context.on('console', (message) => {
      if (message.type() === 'error') this.errors.push(message.text());
    });
  }

  static async open(options: BrowserOptions): Promise<ReadbackBrowser> {
    const { path, environment } = await findChromium();
    const context = await chromium.launchPersistentContext(options.profile, {
      executablePath: path,
      env: { ...process.env, ...environment },
      chromiumSandbox: false,
      viewport: options.size ?? PHONE,
      hasTouch: options.touch === true,
      args: ['--disable-gpu', ...microphoneArgs(options), ...(options.args ?? [])],
    });
    context.setDefaultTimeout(20_000);
    if (options.voice !== 'spoken') await context.addInitScript(keepSilent);
    return new ReadbackBrowser(context);
  }

  async page(url: string): Promise<Page> {
    const page = await this.context.newPage();
    await page.goto(url);
    return page;
  }

  async close(): Promise<void> {
    await this.context.close();
  }

  /** The browser's processes, as it tells them itself. */
  async processes(): Promise<readonly { readonly type: string; readonly id: number }[]> {
    const session = await this.context.browser()?.newBrowserCDPSession();
    return (await session?.send('SystemInfo.getProcessInfo'))?.processInfo ?? [];
  }

  /** Ends the browser as a crash would. */
  async kill(): Promise<void> {
    const own = (await this.processes()).find(({ type }) => type === 'browser');
    if (own === undefined) throw new Error('the browser does not tell its process');
    const closed = new Promise((resolve) => this.context.once('close', resolve));
    process.kill(own.id, 'SIGKILL');
    await closed;
  }
}

/** Chosen on the device before the page looks, as a person may choose it under More, Sound. */
function keepSilent(): void {
  if (location.protocol !== 'http:' || localStorage.getItem('readback.sound') !== null) return;
  localStorage.setItem('readback.sound', JSON.stringify({ voice: 'silent' }));
}

function microphoneArgs({ sound, microphone = 'allowed' }: BrowserOptions): readonly string[] {
  if (microphone === 'absent') return [];
  return [
    '--use-fake-device-for-media-stream',
    `--use-fake-ui-for-media-stream${microphone === 'refused' ? '=deny' : ''}`,
    ...(sound === undefined ? [] : [`--use-file-for-fake-audio-capture=${sound}`]),
  ];
}

/** Waits until everything that a start without the server needs is on the device: pages and model. */
export async function keptForOffline(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    const name = (await caches.keys()).find((key) => key.startsWith('readback-model-')) ?? '';
    while ((await (await caches.open(name)).keys()).length < 9)
      await new Promise((resolve) => setTimeout(resolve, 100));
  });
}

/** What a person does in the browser's own settings: no microphone for the pages of this address. */
export async function refuseMicrophone(context: BrowserContext, origin: string): Promise<void> {
  const session = await context.browser()?.newBrowserCDPSession();
  await session?.send('Browser.setPermission', {
    permission: { name: 'microphone' },
    setting: 'denied',
    origin,
  });
}

/** Keeps a picture of the page at both sizes, for people to look at. */
export async function picture(page: Page, name: string): Promise<void> {
  await mkdir(PICTURES, { recursive: true });
  const before = page.viewportSize();
  for (const size of [PHONE, SMALL_PHONE, DESK]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: join(PICTURES, `${name}-${size.width}x${size.height}.png`) });
  }
  if (before !== null) await page.setViewportSize(before);
}

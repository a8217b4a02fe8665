import { createServer, type Server } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { keptForOffline, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let elsewhere: Server;
let browser: ReadbackBrowser;
/** What the browser asked of any address but this machine's. */
const strayed: string[] = [];

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  // Everything that is not for this machine goes through a proxy that only takes note.
  elsewhere = createServer((request, response) => {
    strayed.push(request.url ?? '');
    response.writeHead(502).end();
  });
  elsewhere.on('connect', (request, socket: Socket) => {
    strayed.push(request.url ?? '');
    socket.end('HTTP/1.1 502 Bad Gateway\r\n\r\n');
  });
  await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve));
  const proxy = `http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}`;
  browser = await ReadbackBrowser.open({
    profile: `${folder.path}/profile`,
    args: [`--proxy-server=${proxy}`, '--proxy-bypass-list=127.0.0.1'],
  });
});
afterAll(async () => {
  await browser.close();
  elsewhere.close();
  await server.stop();
  await folder.remove();
});

describe('the pages keep to themselves', () => {
  test('under a policy that allows their own scripts and WebAssembly, and the microphone, and no more', async () => {
    const response = await fetch(server.url);
    const policy = response.headers.get('content-security-policy') ?? '';
    const rules = new Map(
      policy.split(';').map((rule) => [rule.trim().split(' ')[0] ?? '', rule.trim().split(' ').slice(1)]),
    );
    expect(rules.get('script-src')).toEqual(["'self'", "'wasm-unsafe-eval'"]);
    expect(rules.get('default-src')).toEqual(["'self'"]);
    expect(rules.get('style-src')).toEqual(["'self'"]);
    expect(rules.get('connect-src')).toEqual(["'self'"]);
    expect(policy).not.toContain('unsafe-inline');
    expect(response.headers.get('permissions-policy')).toContain('microphone=(self)');
  });

  test('and ask nothing of any other address: start, visit, ear, service worker, review', async () => {
    const page = await browser.page(server.url);
    const technician = new Technician(page);
    await technician.openVisit('Own origin', 'does not cool');
    await page.getByRole('button', { name: 'ear off' }).click();
    await page.locator('[data-ear="listening"], [data-ear="hearing"]').waitFor({ timeout: 60_000 });
    await technician.type('outdoor air ninety four degrees');
    await keptForOffline(page);
    await page.goto(`${server.url}/review`);
    await page.locator('.visit-card').click();
    await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
    expect(browser.errors).toEqual([]);
    expect(browser.requests.filter((url) => new URL(url).host !== new URL(server.url).host)).toEqual([]);
    expect(strayed).toEqual([]);
  }, 120_000);

  test('the watch would notice: a page that does ask is seen at the proxy', async () => {
    const page = await browser.page('about:blank');
    await page.goto('http://elsewhere.invalid/').catch(() => undefined);
    expect(strayed).toContain('http://elsewhere.invalid/');
    await page.close();
  });
});

test('scripts are sent packed, in whichever way the browser takes', async () => {
  const html = await (await fetch(server.url)).text();
  const script = /src="(\/assets\/[^"]+\.js)"/.exec(html)?.[1] ?? '';
  const sizes = new Map<string, number>();
  for (const encoding of ['br', 'gzip', 'identity']) {
    const response = await fetch(server.url + script, { headers: { 'accept-encoding': encoding } });
    expect(response.headers.get('content-encoding') ?? 'identity').toBe(encoding);
    expect(response.headers.get('vary')).toMatch(/accept-encoding/i);
    sizes.set(encoding, Number(response.headers.get('content-length')));
    expect((await response.text()).length).toBeGreaterThan(100_000);
  }
  expect(sizes.get('gzip')).toBeLessThan((sizes.get('identity') ?? 0) / 2);
});

describe('the pages can be installed', () => {
  test('by a manifest with a name, a start, a display of its own and icons that are there', async () => {
    const page = await browser.page(server.url);
    const session = await page.context().newCDPSession(page);
    const { data, errors } = await session.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    const manifest = JSON.parse(data ?? '{}');
    expect(manifest).toMatchObject({ name: 'Readback', start_url: '/', display: 'standalone' });
    const sizes = manifest.icons.map((icon: { sizes: string }) => icon.sizes);
    expect(sizes).toEqual(expect.arrayContaining(['192x192', '512x512']));
    for (const { src } of manifest.icons) {
      const icon = await fetch(new URL(src, server.url));
      expect(icon.headers.get('content-type')).toMatch(/^image\//);
    }
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    // The headless browser has no window to install into; nothing else may stand in the way.
    expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
    await page.close();
  });
});

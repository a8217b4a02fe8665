import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import jsqr from 'jsqr';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { LIGHTS } from '../../client/screens/session/screen-settings.ts';
import { accessFaults, overflow } from './look-over.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { DESK, PHONE, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

const PASSWORD = 'nine copper manifolds';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
/** By its name: a passkey is good for a name, and for no bare address. */
let address: string;
let desk: ReadbackBrowser;
let phone: ReadbackBrowser;
beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  address = `http://localhost:${server.port}`;
  desk = await ReadbackBrowser.open({ profile: `${folder.path}/desk`, size: DESK });
  phone = await ReadbackBrowser.open({ profile: `${folder.path}/phone` });
});
afterAll(async () => {
  await desk.close();
  await phone.close();
  await server.stop();
  await folder.remove();
});

/** The link that the tool prints, as whoever keeps the data folder gets it. */
function keeperLink(): string {
  const tool = join(PROJECT_ROOT, '.build/server/tools/keeper.js');
  const args = [tool, '--data', `${folder.path}/data`, '--url', address, '--company', 'north', 'robin'];
  return /http\S+/.exec(execFileSync(process.execPath, args, { encoding: 'utf8' }))?.[0] ?? '';
}

/** Chromium's own stand-in for a phone's fingerprint (its protocol, domain WebAuthn): it makes and answers real keys. */
async function withAuthenticator(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('WebAuthn.enable');
  await session.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
}

async function looksRight(page: Page, name: string): Promise<void> {
  await picture(page, name);
  const light = (chosen: string) =>
    page.evaluate((one) => {
      document.documentElement.dataset['light'] = one;
    }, chosen);
  for (const one of LIGHTS) {
    await light(one);
    expect.soft(await accessFaults(page), `${name}, ${one}`).toEqual([]);
  }
  await light('light');
  const before = page.viewportSize() ?? DESK;
  for (const size of [DESK, PHONE]) {
    await page.setViewportSize(size);
    expect.soft(await overflow(page), `${name} at ${size.width}`).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize(before);
}

/** What the picture says to whoever scans it, read by another library than the one that drew it. */
async function scanned(page: Page): Promise<string | undefined> {
  const pixels = await page.locator('svg.qr').evaluate(async (svg) => {
    const image = new Image();
    image.src = `data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(svg))}`;
    await image.decode();
    const canvas = new OffscreenCanvas(400, 400);
    const context = canvas.getContext('2d');
    context?.drawImage(image, 0, 0, 400, 400);
    return [...(context?.getImageData(0, 0, 400, 400).data ?? [])];
  });
  const read = jsqr as unknown as typeof jsqr.default;
  return read(Uint8ClampedArray.from(pixels), 400, 400)?.data;
}

describe('people and devices, in real browsers', () => {
  let page: Page;
  let keyed: Page;

  test('nobody signs in on this machine, until a keeper was added: then every page sends there', async () => {
    page = await desk.page(`${address}/sign-in`);
    await page.getByText('Nobody needs to sign in').waitFor();
    const link = keeperLink();
    await page.goto(`${address}/review`);
    await page.getByRole('link', { name: 'Sign in first' }).waitFor();
    await page.goto(link);
    await page.locator('[data-signed-in="keeper"]').waitFor();
    // The code is spent, and stands in the address no more.
    expect(page.url()).toBe(`${address}/sign-in`);
    await looksRight(page, 'way-in');
  });

  test('a passkey is made, and signs in without a name', async () => {
    await withAuthenticator(page);
    await page.getByRole('button', { name: 'Make a passkey' }).click();
    await page.getByText('The passkey is made').waitFor();
    await page.getByRole('button', { name: 'Sign out' }).click();
    const byPasskey = page.getByRole('button', { name: 'Sign in with a passkey' });
    await byPasskey.waitFor();
    // It is the first of the ways in.
    expect(await page.locator('main button').first().textContent()).toBe('Sign in with a passkey');
    await looksRight(page, 'sign-in');
    await byPasskey.click();
    await page.locator('[data-signed-in="keeper"]').waitFor();
  });

  test('a password is set, and signs in from another browser; a wrong one is told', async () => {
    await page.getByLabel('New password').fill(PASSWORD);
    await page.getByRole('button', { name: 'Set the password' }).click();
    await page.getByText('The password is set').waitFor();
    const other = await phone.page(`${address}/sign-in?next=/people`);
    const fill = async (password: string) => {
      await other.getByLabel('Name to sign in by').fill('robin');
      await other.getByLabel('Password', { exact: true }).fill(password);
      await other.getByRole('button', { name: 'Sign in', exact: true }).click();
    };
    await fill('not it at all');
    await other.getByText('Name or password is wrong').waitFor();
    await fill(PASSWORD);
    await other.getByRole('heading', { name: 'People and devices' }).waitFor();
    expect(other.url()).toBe(`${address}/people`);
    await other.goto(`${address}/sign-in`);
    await other.getByRole('button', { name: 'Sign out' }).click();
    await other.getByRole('button', { name: 'Sign in', exact: true }).waitFor();
    await other.close();
  });

  test('a keeper adds a person, and a code to scan pairs their device, whose key no page can read', async () => {
    await page.goto(`${address}/people`);
    await page.getByLabel('Name', { exact: true }).fill('Kim');
    await page.getByLabel('Name to sign in by').fill('kim');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.locator('[data-given="link"]').waitFor();
    await looksRight(page, 'people');
    await page.getByRole('button', { name: 'Pair a device of Kim' }).click();
    await page.locator('[data-given="pairing"]').waitFor();
    const text = (await scanned(page)) ?? '';
    expect(text).toMatch(new RegExp(`^${address}/pair#[a-z0-9]{26}$`));

    keyed = await phone.page(`${address}/`);
    await keyed.locator('[data-unpaired]').waitFor();
    await keyed.goto(text);
    await keyed.getByRole('button', { name: 'Pair this device' }).waitFor();
    await looksRight(keyed, 'pair');
    await keyed.getByRole('button', { name: 'Pair this device' }).click();
    await keyed.locator('[data-paired]').waitFor();
    const kept = await keyed.evaluate(async () => {
      const open = indexedDB.open('readback-device');
      const database = await new Promise<IDBDatabase>((resolve) => {
        open.onsuccess = () => resolve(open.result);
      });
      const get = database.transaction('pairing').objectStore('pairing').get('own');
      const { privateKey } = await new Promise<{ privateKey: CryptoKey }>((resolve) => {
        get.onsuccess = () => resolve(get.result);
      });
      const ways = ['pkcs8', 'jwk', 'raw'] as const;
      const outcomes = await Promise.allSettled(ways.map((way) => crypto.subtle.exportKey(way as 'jwk', privateKey)));
      return { extractable: privateKey.extractable, given: outcomes.map(({ status }) => status) };
    });
    expect(kept).toEqual({ extractable: false, given: ['rejected', 'rejected', 'rejected'] });
  });

  test('the paired device sends its visit with nobody signed in; its keeper reads it, nobody else does', async () => {
    await keyed.goto(`${address}/`);
    expect(await keyed.locator('[data-unpaired]').count()).toBe(0);
    const technician = new Technician(keyed);
    await technician.openVisit('Pump house', 'does not cool');
    await technician.sent();
    await page.goto(`${address}/review`);
    await page.getByText('Pump house').click();
    await page.locator('main.review').waitFor();
    expect((await fetch(`${server.url}/api/visits`)).status).toBe(401);
    const strangers = await keyed.evaluate(async () => (await fetch('/api/visits')).status);
    expect(strangers).toBe(401);
  });

  test('a device that is revoked is told so in its running visit, and keeps what it has', async () => {
    await page.goto(`${address}/people`);
    page.on('dialog', (dialog) => void dialog.accept());
    await page.getByRole('button', { name: /^Revoke page-/ }).click();
    await keyed.locator('[data-link-stopped]').waitFor();
    expect(await keyed.locator('[data-link-stopped]').textContent()).toMatch(/taken out of the company.*kept/);
    await page.getByText('revoked', { exact: false }).first().waitFor();
    await new Technician(keyed).type('note that the door was locked');
    await looksRight(page, 'people-revoked');
  });

  test('what it had not sent is saved there as a file, and handed over by its keeper', async () => {
    await keyed.goto(`${address}/?visits`);
    await keyed.getByText('Not sent yet').click();
    const [download] = await Promise.all([
      keyed.waitForEvent('download'),
      keyed.getByRole('button', { name: 'Save Pump house' }).click(),
    ]);
    const file = `${folder.path}/${download.suggestedFilename()}`;
    await download.saveAs(file);
    await page.getByLabel(/^Hand over a file of page-/).setInputFiles(file);
    await page.getByText(/[1-9]\d* entries taken, [1-9]\d* were here already\.$/).waitFor();
  });

  test('it can be paired again, as another device than the one that was revoked', async () => {
    await page.getByRole('button', { name: 'Pair a device of Kim' }).click();
    await page.locator('[data-given="pairing"] code').waitFor();
    const code = (await page.locator('[data-given="pairing"] code').textContent()) ?? '';
    await keyed.goto(`${address}/pair`);
    const before = await keyed.locator('[data-paired]').getAttribute('data-paired');
    await keyed.getByLabel('Code from a keeper').fill(code.toUpperCase());
    await keyed.getByRole('button', { name: 'Pair this device' }).click();
    await keyed
      .getByText('This device is paired as')
      .and(keyed.locator(`[data-paired]:not([data-paired="${before}"])`))
      .waitFor();
  });
});

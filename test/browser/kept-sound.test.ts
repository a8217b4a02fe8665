import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readWav } from '../../client/listening/wav.ts';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { filesOf, handedIn } from './kept-files.ts';
import { type KeptStore, keptStores } from './kept-stores.ts';
import { spokenSound } from './microphone-sound.ts';
import { picture, ReadbackBrowser, SMALL_PHONE, scratch } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let kept: KeptStore;
let server: LocalServer;

/** Spoken by the offline voice into the browser's microphone: the customer agrees, then the word on sound, then more. */
async function spokenVisit(agreed: 'yes' | 'no', ready: (page: Page) => Promise<void> = async () => undefined) {
  const answer = agreed === 'yes' ? 'yes' : 'do not keep the sound';
  const parts = [7, 'customer agrees', 3, answer, 3, 'say again', 60];
  const sound = await spokenSound(`${folder.path}/microphone.wav`, parts);
  const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile-${agreed}`, sound, size: SMALL_PHONE });
  const page = await browser.page(server.url);
  await ready(page);
  const technician = new Technician(page);
  await technician.openAs('technician');
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"]').waitFor({ timeout: 30_000 });
  return { browser, page, technician };
}

const heard = (page: Page, count: number) =>
  page.waitForFunction(
    (least) => Number(document.querySelector('main.visit')?.getAttribute('data-heard-count')) >= least,
    count,
    { timeout: 60_000 },
  );

const stores = await keptStores();

describe.each(stores)('kept in $name', ({ name, make, missing }) => {
  beforeEach(async () => {
    folder = await scratch();
    kept = await make(folder.path);
    server = await kept.start();
  });
  afterEach(async () => {
    await server?.stop();
    await kept?.remove();
    await folder?.remove();
  });

  test.skipIf(missing)(
    'what was agreed to be kept is sent, heard in the review, given out, kept for its days, and gone when it is erased',
    async () => {
      const { browser, page, technician } = await spokenVisit('yes');
      await heard(page, 3);
      await technician.settled();
      await technician.sent();
      const files = await handedIn(page);
      expect(files.every(({ received, kind }) => received && kind === 'sound')).toBe(true);
      const visit = await onlyVisit(server.url);
      const { folded, flaw, events } = await servedRecord(server.url, visit);
      expect(flaw).toBeUndefined();
      expect(folded.items.map(({ item }) => item)).toEqual(['consent-given', 'sound-kept']);
      // Nothing before the word that agreed, that one not either; each utterance behind it that was accepted.
      const agreedAt = folded.items.find(({ item }) => item === 'sound-kept')?.seq ?? 0;
      const withSound = folded.heard.filter(({ sound }) => sound !== undefined);
      expect(withSound.length).toBeGreaterThan(0);
      for (const { seq, sound, accepted } of folded.heard) expect(sound !== undefined).toBe(seq > agreedAt && accepted);
      expect(files.map(({ sha256 }) => sha256)).toEqual(withSound.map(({ sound }) => sound?.sha256));
      // What the record holds and the server stores is sealed.
      const site = folded.site;
      expect(site.length).toBeGreaterThan(3);
      expect(events.some(({ body }) => body.includes(site) || body.includes('say again'))).toBe(false);
      expect(await kept.holds(visit)).toBe(true);
      for (const words of [site, 'say again']) expect(await kept.holds(words)).toBe(false);

      // The sound is what the microphone heard: as long, and no silence.
      const [{ sound } = { sound: undefined }] = withSound;
      const answer = await fetch(`${server.url}/api/visits/${visit}/attachments/${sound?.sha256}`);
      const file = Buffer.from(await answer.arrayBuffer());
      const samples = readWav(new Uint8Array(file), 'kept.wav');
      expect(samples.length / 16).toBeCloseTo(sound?.ms ?? 0, -1);
      expect(Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length)).toBeGreaterThan(
        0.005,
      );

      // The supervisor's page reads the words and plays the sound.
      await page.goto(`${server.url}/review?visit=${visit}`);
      await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
      expect(await page.locator('h1').textContent()).toContain(site);
      const play = page.locator(`[data-sound="${sound?.sha256}"]`).first();
      await play.click();
      await page.locator(`[data-sound="${sound?.sha256}"][data-played]`).first().waitFor();
      expect(Number(await play.getAttribute('data-played'))).toBeCloseTo(sound?.ms ?? 0, -2);
      await picture(page, 'review-sound');

      // All that is held of this customer, in the open: what was heard is the same sound.
      const to = join(folder.path, 'customer');
      const counts = kept.run('export-customer', '--site', site, '--to', to);
      expect(counts).toBe(`1 visit and ${files.length} ${files.length === 1 ? 'file' : 'files'} in ${to}\n`);
      expect(readFileSync(join(to, visit, `${sound?.sha256}.wav`)).equals(file)).toBe(true);
      expect(JSON.parse(readFileSync(join(to, visit, 'record.json'), 'utf8')).site).toBe(site);

      // Kept for so many days: two pass, the server starts again, and the sounds go; the words stay.
      await server.stop();
      await kept.age(2);
      server = await kept.start(server.port, { RETAIN_SOUND_DAYS: '3' });
      const address = `${server.url}/api/visits/${visit}/attachments/${sound?.sha256}`;
      expect((await fetch(address)).status).toBe(200);
      await server.stop();
      server = await kept.start(server.port, { RETAIN_SOUND_DAYS: '1' });
      expect((await fetch(address)).status).toBe(410);
      expect((await servedRecord(server.url, visit)).folded.site).toBe(site);

      // Erased by a keeper, as whoever sits at this machine is one.
      const { keys } = (await (await fetch(`${server.url}/api/visits/${visit}/keys`)).json()) as {
        keys: { key: string }[];
      };
      const key = Buffer.from(keys[0]?.key ?? '', 'base64url');
      expect([key.length, await kept.holds(key)]).toEqual([32, true]);
      const erased = await fetch(`${server.url}/api/visits/${visit}/erase`, {
        method: 'POST',
        headers: { origin: server.url },
      });
      expect(await erased.json()).toMatchObject({ keys: 1, open: 0, left: [] });
      expect(await kept.holds(key)).toBe(false);
      await page.reload();
      await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
      expect(await page.locator('h1').textContent()).toContain('(erased)');
      expect(await page.locator('main').textContent()).not.toContain(site);
      await play.click();
      await page.getByText('was erased').first().waitFor();
      await picture(page, 'review-erased');
      expect((await servedRecord(server.url, visit)).flaw).toBeUndefined();

      // The device hears of it as it next connects, and forgets its own key and files.
      await page.goto(`${server.url}/`);
      for (let tries = 0; (await filesOf(page)).length > 0 && tries < 100; tries += 1) await page.waitForTimeout(100);
      expect(await filesOf(page)).toEqual([]);
      await browser.close();
    },
    180_000,
  );

  test.skipIf(missing)(
    'without agreement no sound is kept or sent',
    async () => {
      const { browser, page, technician } = await spokenVisit('no');
      await heard(page, 3);
      await technician.settled();
      await technician.sent();
      const visit = await onlyVisit(server.url);
      const { folded } = await servedRecord(server.url, visit);
      expect(folded.items.map(({ item }) => item)).toEqual(['consent-given', 'sound-not-kept']);
      expect(folded.heard.filter(({ sound }) => sound !== undefined)).toEqual([]);
      expect(await filesOf(page)).toEqual([]);
      expect(await (await fetch(`${server.url}/api/visits/${visit}/attachments`)).json()).toEqual({ attachments: [] });
      await browser.close();
    },
    180_000,
  );

  // The same of any store: the page does it.
  if (name === stores[0]?.name)
    test('a sound of a visit that the server does not hold yet stays on the device, and is sent behind it', async () => {
      let away = true;
      const { browser, page, technician } = await spokenVisit('yes', (opened) =>
        opened.routeWebSocket(/\/sync/, (socket) => {
          if (away) void socket.close();
          else socket.connectToServer();
        }),
      );
      await heard(page, 3);
      await technician.settled();
      const named = (await filesOf(page)).filter((one) => one.named);
      expect(named.length).toBeGreaterThan(0);
      // The browser says that there is a network: the files are tried before the visit came.
      const refused = page.waitForResponse(
        (answer) => answer.url().includes('/attachments/') && answer.status() === 404,
      );
      await page.evaluate(() => globalThis.dispatchEvent(new Event('online')));
      expect(await (await refused).json()).toMatchObject({ error: 'visit-unknown' });
      expect((await filesOf(page)).filter(({ here }) => here)).toHaveLength(named.length);
      away = false;
      await technician.sent();
      expect((await handedIn(page)).map(({ sha256 }) => sha256)).toEqual(named.map(({ sha256 }) => sha256));
      await browser.close();
    }, 180_000);
});

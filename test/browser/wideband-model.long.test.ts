import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { spokenSound } from './microphone-sound.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

const SENTENCE = 'outdoor air ninety four degrees';

let folder: Awaited<ReturnType<typeof scratch>>;
beforeAll(async () => {
  folder = await scratch();
});
afterAll(() => folder.remove());

/** What the page keeps of the recogniser's models, by address. */
const keptFiles = async (): Promise<string[]> => {
  const names = (await caches.keys()).filter((name) => name.startsWith('readback-model-'));
  const cache = await caches.open(names[0] ?? '');
  return (await cache.keys()).map(({ url }) => new URL(url).pathname);
};

describe('the models of the ear', () => {
  test('are both served from the build, used and kept; what a model has not is a real 404', async () => {
    const server = await startServer(`${folder.path}/data`);
    const sound = await spokenSound(`${folder.path}/said.wav`, [9, SENTENCE, 40]);
    const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
    try {
      for (const missing of ['feature_transform.gz', 'feature_transform', 'dict.txt.gz', '..%2Fmdef.gz']) {
        expect((await fetch(`${server.url}/model/wideband/${missing}`)).status, missing).toBe(404);
      }
      expect((await fetch(`${server.url}/model/en-us/feature_transform.gz`)).status).toBe(404);
      const technician = new Technician(await browser.page(server.url));
      const { page } = technician;
      await technician.openVisit('Wideband', 'does not cool');
      await page.getByRole('button', { name: 'ear off' }).click();
      await page.locator('main.visit[data-heard-count="1"]').waitFor({ timeout: 60_000 });
      await technician.settled();
      await technician.sent();
      const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
      expect(folded.heard.map(({ text }) => text)).toEqual([SENTENCE]);
      const kept = await page.evaluate(keptFiles);
      expect(kept).toContain('/model/wideband/sendump.gz');
      expect(kept).toContain('/model/en-us/sendump.gz');
    } finally {
      await browser.close();
      await server.stop();
    }
  }, 120_000);

  test('where the 16 kHz one cannot be had, the other hears alone', async () => {
    const server = await startServer(`${folder.path}/data-alone`);
    const sound = await spokenSound(`${folder.path}/said.wav`, [9, SENTENCE, 40]);
    const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile-alone`, sound });
    try {
      const technician = new Technician(await browser.page(server.url));
      const { page } = technician;
      await page.context().route('**/model/wideband/**', (route) => route.abort());
      await technician.openVisit('Alone', 'does not cool');
      await page.getByRole('button', { name: 'ear off' }).click();
      await page.locator('main.visit[data-heard-count="1"]').waitFor({ timeout: 60_000 });
      const kept = await page.evaluate(keptFiles);
      expect(kept).not.toContain('/model/wideband/sendump.gz');
      expect(kept).toContain('/model/en-us/sendump.gz');
    } finally {
      await browser.close();
      await server.stop();
      await rm(`${folder.path}/profile-alone`, { recursive: true, force: true });
    }
  }, 120_000);
});

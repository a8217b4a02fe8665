import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { spokenSound } from './microphone-sound.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord } from './served-record.ts';
import { Technician } from './technician.ts';

/** Debian's package pocketsphinx-en-us. .ci/run installs it, and says so by READBACK_CI. */
const INSTALLED = existsSync('/usr/share/pocketsphinx/model/en-us/en-us/mdef');

let folder: Awaited<ReturnType<typeof scratch>>;
beforeAll(async () => {
  folder = await scratch();
});
afterAll(() => folder.remove());

/** What a started server says about its ear. */
async function earLine(environment: Readonly<Record<string, string>>): Promise<string> {
  const child = spawn(process.execPath, [join(PROJECT_ROOT, '.build/server/main.js')], {
    env: { PATH: process.env['PATH'], DATA_DIR: join(folder.path, 'ear-line'), PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let out = '';
  for await (const text of child.stdout) {
    out += text;
    if (out.includes('"ready"')) child.kill('SIGTERM');
  }
  return out.split('\n').find((line) => line.startsWith('Ear: ')) ?? out;
}

describe('the server', () => {
  test('does not start with a folder that holds none', async () => {
    expect(await earLine({ WIDEBAND_MODEL: join(folder.path, 'nothing') })).toBe('');
  });

  test(INSTALLED ? 'says which 16 kHz model it found' : 'WITHOUT pocketsphinx-en-us says so', async () => {
    if (process.env['READBACK_CI'] === '1') expect(INSTALLED, '.ci/run installs the model').toBe(true);
    expect(await earLine({})).toContain(INSTALLED ? '/usr/share/pocketsphinx/model/en-us/en-us' : 'bundled model only');
  });
});

describe(INSTALLED ? 'the 16 kHz model' : 'WITHOUT the 16 kHz model (apt-get install pocketsphinx-en-us)', () => {
  test(INSTALLED
    ? 'is offered to the page, which hears with it; what the model has not is a real 404'
    : 'the page offers the bundled one only', async () => {
    const server = await startServer(`${folder.path}/data`);
    const sound = await spokenSound(`${folder.path}/said.wav`, [9, 'outdoor air ninety four degrees', 40]);
    const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound });
    try {
      for (const missing of ['feature_transform.gz', 'feature_transform', 'mdef', '..%2Fmdef.gz']) {
        expect((await fetch(`${server.url}/model/wideband/${missing}`)).status, missing).toBe(404);
      }
      expect((await fetch(`${server.url}/model/en-us/feature_transform.gz`)).status).toBe(404);
      const { models } = (await (await fetch(`${server.url}/api/health`)).json()) as { models: string[] };
      expect(models).toEqual(INSTALLED ? ['bundled', 'wideband'] : ['bundled']);
      const technician = new Technician(await browser.page(server.url));
      const { page } = technician;
      await technician.openVisit('Wideband', 'does not cool');
      await page.getByRole('button', { name: 'More', exact: true }).click();
      await page.getByRole('button', { name: 'Sound', exact: true }).click();
      await page.getByLabel('our own, on this device').waitFor();
      await page.waitForTimeout(500);
      expect(await page.getByLabel(/16 kHz model/).count()).toBe(INSTALLED ? 1 : 0);
      if (INSTALLED) await page.getByLabel(/16 kHz model/).check();
      await page.getByRole('button', { name: 'Keep' }).click();
      await page.getByRole('button', { name: 'ear off' }).click();
      await page.locator('main.visit[data-heard-count="1"]').waitFor({ timeout: 60_000 });
      await technician.settled();
      await technician.sent();
      const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
      expect(folded.heard.map(({ text }) => text)).toEqual(['outdoor air ninety four degrees']);
      const kept = await page.evaluate(async () => {
        const names = (await caches.keys()).filter((name) => name.startsWith('readback-model-'));
        const cache = await caches.open(names[0] ?? '');
        return (await cache.keys()).map(({ url }) => new URL(url).pathname);
      });
      expect(kept.includes('/model/wideband/sendump.gz')).toBe(INSTALLED);
    } finally {
      await browser.close();
      await server.stop();
    }
  }, 120_000);
});

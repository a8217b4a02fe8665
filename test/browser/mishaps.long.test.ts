import { cp, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type LocalServer, startLocalServer } from '../../client/record/node/local-server.ts';
import { PROJECT_ROOT } from './project-root.ts';
import {
  type BrowserOptions,
  picture,
  ReadbackBrowser,
  refuseMicrophone,
  scratch,
  startServer,
} from './readback-browser.ts';
import { onlyVisit, servedRecord, servedVisits } from './served-record.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser | undefined;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
});
afterEach(async () => {
  await browser?.close();
  await server.stop();
  await folder.remove();
});

async function openVisit(options: Omit<BrowserOptions, 'profile'> = {}, url = server.url): Promise<Technician> {
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, ...options });
  const technician = new Technician(await browser.page(url));
  await technician.openVisit('Mishap', 'does not cool');
  return technician;
}

async function switchEarOn(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="failed"]').waitFor({ timeout: 30_000 });
  return (await page.locator('[data-ear-fault]').textContent()) ?? '';
}

/** The visit goes on by typing, and the record says why it was not heard. */
async function goesOnByTyping(technician: Technician, fault: string): Promise<void> {
  await technician.type('outdoor air ninety four degrees');
  await technician.sent();
  const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
  expect(folded.readings).toHaveLength(1);
  expect(folded.interruptions.map((line) => line.sentence).join()).toContain(fault);
}

describe('without ears the visit goes on by touch and typing', () => {
  test('no microphone', async () => {
    const technician = await openVisit({ microphone: 'absent' });
    expect(await switchEarOn(technician.page)).toBe('No microphone was found: plug one in, or type and touch instead.');
    await picture(technician.page, 'visit-no-microphone');
    await goesOnByTyping(technician, 'No microphone');
  });

  test('permission refused', async () => {
    const technician = await openVisit({ microphone: 'refused' });
    expect(await switchEarOn(technician.page)).toMatch(/^This page may not use the microphone: allow it/);
    await goesOnByTyping(technician, 'may not use the microphone');
  });

  test('permission revoked while it listens', async () => {
    const technician = await openVisit();
    const { page } = technician;
    await page.getByRole('button', { name: 'ear off' }).click();
    await page.locator('[data-ear="listening"]').waitFor({ timeout: 30_000 });
    await refuseMicrophone(page.context(), server.url);
    await page.locator('[data-ear="failed"]').waitFor();
    expect(await page.locator('[data-ear-fault]').textContent()).toMatch(/^The microphone is gone: /);
    await goesOnByTyping(technician, 'microphone is gone');
  });

  test('a file of the model is missing: a real 404, and one sentence that names it', async () => {
    await withBuild(async (build) => {
      await rm(join(build, 'web/model/en-us/mdef.gz'));
      const bare = await startLocalServer({ program: join(build, 'server/main.js'), dataDir: `${folder.path}/bare` });
      try {
        expect((await fetch(`${bare.url}/model/en-us/mdef.gz`)).status).toBe(404);
        const technician = await openVisit({}, bare.url);
        expect(await switchEarOn(technician.page)).toBe(
          'The recogniser could not be loaded (/model/en-us/mdef.gz: 404 Not Found): connect to the server and switch the ear on again, or type and touch instead.',
        );
        await technician.type('outdoor air ninety four degrees');
        await technician.sent();
      } finally {
        await browser?.close();
        browser = undefined;
        await bare.stop();
      }
    });
  });
});

describe('a record that cannot be written or sent', () => {
  test('no room left: a loud stop, nothing counted as saved, and the visit goes on once there is room', async () => {
    browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
    const page = await browser.page('about:blank');
    const session = await page.context().newCDPSession(page);
    // Before the page first looks: a browser trusts its look at the quota for half a minute.
    await session.send('Storage.overrideQuotaForOrigin', { origin: server.url, quotaSize: 400_000 });
    await page.goto(server.url);
    const technician = new Technician(page);
    await technician.openVisit('Full', 'does not cool');
    let notes = 0;
    for (; (await page.locator('[data-problem]').count()) === 0; notes += 1) {
      await page.locator('#type-line').fill(`note ${'long '.repeat(390)}`);
      await page.keyboard.press('Enter');
      await technician.settled();
    }
    expect(notes).toBeGreaterThan(2);
    await picture(page, 'visit-no-room');
    expect(await page.locator('[data-problem]').textContent()).toContain('not saved');
    expect(await technician.heardCount()).toBe(notes - 1);
    await session.send('Storage.overrideQuotaForOrigin', { origin: server.url });
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.locator('[data-problem]').waitFor({ state: 'detached' });
    await technician.settled();
    // What was not saved stands in the field again.
    expect(await page.locator('#type-line').inputValue()).toMatch(/^note (long )+long$/);
    await page.locator('#type-line').fill('');
    await technician.type('return air eighty degrees');
    await technician.sent();
    const { folded, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(folded.heard).toHaveLength(notes);
  });

  test('a server of another version takes nothing; the visit goes on and is kept', async () => {
    await withBuild(async (build) => {
      const messages = join(build, 'grammar/visit/messages.js');
      const text = await readFile(messages, 'utf8');
      expect(text).toContain('PROTOCOL = 1');
      await writeFile(messages, text.replace('PROTOCOL = 1', 'PROTOCOL = 2'));
      const newer = await startLocalServer({ program: join(build, 'server/main.js'), dataDir: `${folder.path}/newer` });
      try {
        const technician = await openVisit({}, newer.url);
        await technician.page.locator('[data-link-stopped]').waitFor();
        await picture(technician.page, 'visit-other-server');
        expect(await technician.page.locator('[data-link-stopped]').textContent()).toMatch(/goes on here and is kept/);
        await technician.type('outdoor air ninety four degrees');
        expect(await technician.heardCount()).toBe(1);
        expect(await servedVisits(newer.url)).toEqual([]);
      } finally {
        await browser?.close();
        browser = undefined;
        await newer.stop();
      }
    });
  });
});

/** Works on a copy of the built program and pages that may be spoilt. */
async function withBuild(work: (folder: string) => Promise<void>): Promise<void> {
  // Beside the build, so that the program finds its packages.
  const copy = join(PROJECT_ROOT, `.build-copy-${process.pid}`);
  try {
    for (const part of ['server', 'grammar', 'web']) {
      await cp(join(PROJECT_ROOT, '.build', part), join(copy, part), { recursive: true });
    }
    await work(copy);
  } finally {
    await rm(copy, { recursive: true, force: true });
  }
}

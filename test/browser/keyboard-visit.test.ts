import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { libraryLines, Technician } from './technician.ts';

describe('the library visit by keyboard alone', () => {
  let folder: Awaited<ReturnType<typeof scratch>>;
  let server: LocalServer;
  let browser: ReadbackBrowser;

  beforeAll(async () => {
    folder = await scratch();
    server = await startServer(`${folder.path}/data`);
    browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
    await folder.remove();
  });

  test('comes to its close, and the server holds all of it', async () => {
    const page = await browser.page('about:blank');
    await page.clock.install();
    await page.goto(server.url);
    const technician = new Technician(page);
    await technician.openVisit('Town library, reading room', 'does not cool');
    for (const line of libraryLines()) {
      if ('later' in line) await page.clock.fastForward(line.later * 60_000);
      else await technician.type(line.words);
      if (process.env['TRACE'])
        console.log(
          JSON.stringify(line),
          '=>',
          await technician.said(),
          '|',
          await page.locator('.asked-words').textContent(),
        );
    }
    await technician.sent();
    expect(await page.locator('[data-asked]').getAttribute('data-asked')).toBe('closed');
  });
});

import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { asPalette } from './as-palette.ts';
import { spokenSound } from './microphone-sound.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit } from './served-record.ts';
import { libraryLines, Technician } from './technician.ts';

/**
 * Makes the pictures of README.md anew, as PNG under fixtures/pictures: `npm run pictures`. The library visit is typed
 * into the real page, in a real browser with the real server, on a clock set here; the number of the visit and some
 * seconds differ from one making to the next. Run after a screen was changed, and look at them.
 */
const FOLDER = join(PROJECT_ROOT, 'fixtures/pictures');
/** When the visit is opened, and how long a sentence with its answer takes. */
const OPENED = new Date('2026-06-15T14:00:00Z');
const PACE_MS = 20_000;
const PHONE = { width: 412, height: 915 } as const;
const DESK = { width: 1280, height: 993 } as const;

/** The technician's page after the line with this id. */
const AFTER: Readonly<Record<string, string>> = { '08-plate-fan': 'caution', '22-bare': 'again' };
/** The replay stands at the first of these lines of the transcript: the finding is not sure yet. */
const REPLAYED = 'one point one microfarads';

const folder = await scratch();
const server = await startServer(join(folder.path, 'data'));
const silence = await spokenSound(join(folder.path, 'silence.wav'), [60]);
const browser = await ReadbackBrowser.open({
  profile: join(folder.path, 'profile'),
  size: PHONE,
  sound: silence,
  args: ['--disable-lcd-text'],
});
try {
  await mkdir(FOLDER, { recursive: true });
  await playVisit(await browser.page('about:blank'));
  await keepReplay(await browser.page(`${server.url}/review?visit=${await onlyVisit(server.url)}`));
} finally {
  await browser.close();
  await server.stop();
  await folder.remove();
}

async function playVisit(page: Page): Promise<void> {
  await page.clock.install({ time: OPENED });
  await page.goto(server.url);
  const technician = new Technician(page);
  await technician.openVisit('Town library, reading room', 'does not cool');
  await page.locator('[data-ear="off"]').click();
  await page.locator('[data-ear="listening"]').waitFor();
  for (const line of libraryLines()) {
    await page.clock.fastForward('later' in line ? line.later * 60_000 : PACE_MS);
    if ('later' in line) continue;
    await technician.type(line.words);
    const name = AFTER[line.id];
    if (name !== undefined) await keep(page, name);
  }
  await technician.sent();
}

async function keepReplay(page: Page): Promise<void> {
  await page.setViewportSize(DESK);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  const lines = page.locator('.transcript li[data-kind="heard"]', { hasText: REPLAYED });
  await lines.first().locator('button').first().click();
  await keep(page, 'replay');
}

/** A picture as nobody touches the page: without focus, and scrolled to its top. */
async function keep(page: Page, name: string): Promise<void> {
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    scrollTo(0, 0);
  });
  const png = await page.screenshot({ animations: 'disabled' });
  await writeFile(join(FOLDER, `${name}.png`), asPalette(png));
}

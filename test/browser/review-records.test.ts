import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, overflow } from './look-over.ts';
import { cutLabels, cutTexts, overlappingLabels, strayDanger } from './look-over-review.ts';
import { at, body, note, ODD_RECORDS, opened } from './odd-records.ts';
import { putVisit, RECORDED, recordedBodies } from './put-visit.ts';
import { DESK, PHONE, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: DESK });
  for (const name of RECORDED) await putVisit(server.url, name, recordedBodies(name));
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

async function open(visit: string, fragment = ''): Promise<Page> {
  const page = await browser.page(`${server.url}/review?visit=${visit}${fragment}`);
  await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
  return page;
}

describe('a visit on its first screen', () => {
  test.each(RECORDED)('answers the five questions, and no label lies over another or is cut: %s', async (name) => {
    const page = await open(name);
    await page.getByText('Before and after the repair').waitFor();
    for (const id of ['wrong', 'sure', 'done', 'cools', 'rightly']) {
      const answer = page.locator(`[data-answer="${id}"]`);
      expect((await answer.textContent())?.length).toBeGreaterThan(10);
      const box = await answer.boundingBox();
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(DESK.height);
    }
    const cut = await page
      .locator('.answer-details')
      .evaluateAll((all) => all.filter((one) => one.scrollHeight > one.clientHeight + 1).map((one) => one.textContent));
    expect([name, cut]).toEqual([name, []]);
    for (const width of [1280, 844, 390, 320]) {
      await page.setViewportSize({ width, height: 800 });
      await page.waitForTimeout(100);
      expect([name, width, await overlappingLabels(page)]).toEqual([name, width, []]);
      expect([name, width, await cutLabels(page)]).toEqual([name, width, []]);
      expect([name, width, await overflow(page)]).toEqual([name, width, 0]);
      expect([name, width, await cutTexts(page)]).toEqual([name, width, []]);
    }
    expect(await strayDanger(page)).toEqual([]);
    await page.close();
  });

  test.each(['light', 'dark', 'sun'])('and the list and the fleet are free of faults of access, %s', async (light) => {
    for (const path of ['/review?visit=library', '/review', '/fleet']) {
      const page = await browser.page(`${server.url}${path}`);
      await page.locator('[data-level="true"], .visit-card, .bar-chart').first().waitFor();
      await page.evaluate((chosen) => {
        document.documentElement.dataset['light'] = chosen;
      }, light);
      expect([path, await accessFaults(page)]).toEqual([path, []]);
      expect([path, await strayDanger(page)]).toEqual([path, []]);
      expect([path, await overlappingLabels(page)]).toEqual([path, []]);
      await page.close();
    }
  });
});

describe('a record that other hands wrote', () => {
  const script = "<img src=x onerror=\"document.title='caught'\"><script>document.title='caught'</script>";

  test('a script in a note, a site or a remark is text, and entries of unknown kinds are shown as such', async () => {
    await putVisit(server.url, 'odd-record', [
      opened(script, script),
      note(script),
      body('drone.launched', { height: 3 }, at(2_000)),
      '{"no":"event"}',
      note('after', 3_000),
    ]);
    const page = await open('odd-record');
    expect(await page.locator('.line-note .line-text').first().textContent()).toBe(`Note: ${script}`);
    expect(await page.locator('.line-unknown .line-text').allTextContents()).toEqual([
      'Unknown entry: drone.launched',
      'Unknown entry: unreadable',
    ]);
    await page.getByText('Write a remark').click();
    await page.getByLabel(/^Remark/).fill(script);
    await page.getByLabel('Your name').fill(script);
    await page.getByRole('button', { name: 'Write it into the record' }).click();
    await page.locator('.line-remark', { hasText: 'onerror' }).waitFor();
    await page.goto(`${server.url}/review?words=drone+onerror`);
    await page.goto(`${server.url}/review`);
    await page.locator('.visit-card', { hasText: 'onerror' }).waitFor();
    await page.goto(`${server.url}/fleet`);
    await page.locator('.bar-chart').first().waitFor();
    expect(await page.title()).toBe('Readback');
    expect(browser.errors).toEqual([]);
    await page.close();
  });

  test.each(ODD_RECORDS)('%s is shown, on a desk and on a phone', async (what, bodies, shown) => {
    const name = `bad-${what.replaceAll(/\W+/g, '-')}`;
    await putVisit(server.url, name, bodies);
    const page = await open(name);
    await page.locator('.line', { hasText: shown }).first().waitFor();
    expect(Number(await page.locator('main.review').getAttribute('data-events'))).toBe(bodies.length);
    expect(await overlappingLabels(page)).toEqual([]);
    expect(await accessFaults(page)).toEqual([]);
    await page.setViewportSize(PHONE);
    expect(await overflow(page)).toBe(0);
    await page.setViewportSize(DESK);
    await picture(page, `review-${name}`);
    await page.close();
  });

  test('a wall clock that was set is named, and one goes there', async () => {
    await putVisit(server.url, 'clock-set', [opened('Clocks'), note('one', 1_000), note('two', 2_000, 3_600_000 * 5)]);
    const page = await open('clock-set', '#t=0');
    await page.getByRole('button', { name: 'clock set 1 ×' }).click();
    expect(await page.locator('main.review').getAttribute('data-count')).toBe('3');
    await page.close();
  });

  test('what a second device logged does not count, and is said not to', async () => {
    await putVisit(server.url, 'two-devices', [opened('Two'), note('mine')]);
    await putVisit(server.url, 'two-devices', [opened('Two'), note('theirs')], 'tablet');
    const page = await open('two-devices');
    await page.locator('[data-others]').waitFor();
    expect(await page.locator('[data-others]').textContent()).toMatch(/^2 entries of other devices do not count/);
    expect(await page.locator('.line', { hasText: 'theirs' }).count()).toBe(0);
    await page.close();
  });

  test('that nobody sealed says how many of its entries no erasing would reach', async () => {
    const plain = body('phase.entered', { phase: 'measure' });
    await putVisit(server.url, 'unsealed', [opened('Open Street'), plain, note('behind the shed')]);
    const page = await open('unsealed');
    await page.getByRole('button', { name: 'Verify the record' }).click();
    const told =
      'local, visit unsealed: 2 entries were written in the open: erasing does not reach what is personal in them.';
    await page.locator('.record-check-said').getByText(told, { exact: true }).waitFor();
    await page.close();
  });

  test('of 200 dictations with kept sound is read to its end', async () => {
    const kept = (n: number) => ({ sha256: n.toString(16).padStart(64, '0'), ms: 2_000, bytes: 64_000 });
    const notes = Array.from({ length: 200 }, (_, n) =>
      body('note.taken', { text: `note ${n}`, sound: kept(n) }, at(n * 1_000)),
    );
    await putVisit(server.url, 'many-sounds', [opened('Many'), ...notes]);
    const page = await open('many-sounds');
    await page.locator('.line', { hasText: 'note 199' }).waitFor();
    expect(await page.locator('.happening path').count()).toBe(200);
    await page.close();
  });

  test('a visit that the server does not know is waited for, and its record read as it comes', async () => {
    const page = await browser.page(`${server.url}/review?visit=late-visit`);
    await page.getByText('holds no entry of this visit yet').waitFor();
    await putVisit(server.url, 'late-visit', [note('here at last', 0)]);
    await page.getByText('here at last').first().waitFor();
    await page.close();
  });
});

describe('a supervisor in the replay', () => {
  const count = async (page: Page) => Number(await page.locator('main.review').getAttribute('data-count'));

  test('goes from landmark to landmark by chips and by keys, back with Shift, and finds all keys under "?"', async () => {
    const page = await open('library', '#t=0');
    await page.locator('[data-goal="proof"]').click();
    await expect
      .poll(() => page.locator('[aria-current="step"]').textContent())
      .toMatch(/[Pp]roof|energy|Suspects|said/);
    const proof = await count(page);
    await expect.poll(() => new URL(page.url()).hash).not.toBe('#t=0');
    await page.evaluate(() => {
      location.hash = '#t=0';
    });
    await expect.poll(() => count(page)).toBeLessThan(proof);
    await page.keyboard.press('c');
    const first = await count(page);
    await page.keyboard.press('c');
    expect(await count(page)).toBeGreaterThan(first);
    await page.keyboard.press('Shift+C');
    expect(await count(page)).toBe(first);
    expect(proof).toBeGreaterThan(first);
    await page.keyboard.press('?');
    const help = page.getByRole('dialog', { name: 'Keys of this page' });
    await help.waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await help.getByLabel('Letters by themselves are keys here').uncheck();
    await page.keyboard.press('Escape');
    await page.keyboard.press('p');
    expect(await count(page)).toBe(first);
    await help.waitFor({ state: 'hidden' });
    await page.keyboard.press('?');
    await help.waitFor();
    await help.getByLabel('Letters by themselves are keys here').check();
    await help.getByRole('button', { name: 'Close' }).click();
    await page.close();
  });

  test('comes by a chip or a line to that very entry, though others were written in the same instant', async () => {
    await putVisit(server.url, 'one-instant', [
      opened('Instant'),
      note('before', 5_000),
      body('hazard.warned', { words: 'Stay clear of it.', zone: 'outdoor-load' }, at(5_000)),
      note('first behind it', 5_000),
      note('last of the instant', 5_000),
    ]);
    const page = await open('one-instant', '#t=0');
    const current = () => page.locator('.line[aria-current="step"]').textContent();
    await page.locator('[data-goal="warning"]').click();
    await expect.poll(current).toContain('Stay clear of it');
    await page.locator('.line', { hasText: 'first behind it' }).click();
    await expect.poll(current).toContain('first behind it');
    expect(await count(page)).toBe(4);
    await page.close();
  });

  test('is told since when nothing came of a visit that is not closed, and finds all ways to take it away in sight', async () => {
    await putVisit(server.url, 'gone-quiet', [opened('Gone quiet'), note('nobody came back')]);
    const page = await browser.page('about:blank');
    // A reader who comes 20 minutes later: by the page's own clock.
    await page.addInitScript(() => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + 20 * 60_000;
    });
    await page.goto(`${server.url}/review?visit=gone-quiet`);
    await expect
      .poll(() => page.locator('[data-link]').textContent())
      .toMatch(/^following live; nothing has come since .*\d:\d\d/);
    await page.close();
    const fresh = await open('gone-quiet');
    expect(await fresh.locator('[data-link]').textContent()).toBe('following live');
    await fresh.setViewportSize({ width: 320, height: 640 });
    await fresh.getByText('Take away', { exact: true }).click();
    for (const box of await fresh
      .locator('.take-away li')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON())))
      expect([box.left >= 0, box.right <= 320]).toEqual([true, true]);
    expect(await fresh.locator('.take-away li').count()).toBe(4);
    expect(await overflow(fresh)).toBe(0);
    await fresh.close();
  });

  test('drags the line of the moment over the charts, and everything follows', async () => {
    const page = await open('library', '#t=0');
    const box = await page.locator('.tracks').boundingBox();
    const [x, y] = [(box?.x ?? 0) + 300, (box?.y ?? 0) + 100];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 300, y, { steps: 5 });
    await page.mouse.up();
    const line = await page.locator('.tracks-moment').boundingBox();
    expect(Math.abs((line?.x ?? 0) + 1.5 - (x + 300))).toBeLessThan(3);
    expect(new URL(page.url()).hash).toMatch(/^#t=\d/);
    await page.close();
  });

  test('writes a remark, which another browser that follows the visit sees at once, and which moves nothing', async () => {
    const watching = await open('fuse');
    const readings = await watching.locator('tr[data-reading]').count();
    const page = await open('fuse');
    await page.getByText('Write a remark').click();
    await page.getByLabel('Your name').fill('Ines');
    await page.getByLabel(/^Remark/).fill('well proven 👍');
    await page.getByRole('button', { name: 'Write it into the record' }).click();
    await page.getByText('Written: the record holds it now.').waitFor();
    await watching.locator('.line-remark', { hasText: 'Ines: well proven 👍' }).waitFor();
    expect(await watching.locator('tr[data-reading]').count()).toBe(readings);
    await page.getByRole('button', { name: 'Verify the record' }).click();
    await page.getByText(/^Nothing speaks against its \d+ events\.$/).waitFor();
    await page.close();
    await watching.close();
  });

  test('sets the visit beside another to the same unit', async () => {
    const page = await open('library');
    await page.getByText('Beside another visit to this unit').click();
    await page.getByRole('combobox', { name: 'Beside' }).selectOption({ value: 'low-charge' });
    const table = page.locator('.tables table', { has: page.getByRole('columnheader', { name: 'This visit' }) });
    await table.getByText('76 °F').first().waitFor();
    await page.close();
  });

  test('sees every entry of the record where that is asked for, and else how many have no line and why', async () => {
    const page = await open('one-pole');
    await page.getByText(/\d+ entries of the record have no line here/).click();
    await page.getByText(/\d+ × mouth\.finished: that a prompt had been spoken/).waitFor();
    await page.getByLabel('What is shown of it').selectOption('every entry');
    await page.locator('.line-entry', { hasText: 'mouth.finished' }).first().waitFor();
    const seqs = await page
      .locator('.transcript [data-seq]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-seq')));
    expect(new Set(seqs).size).toBeGreaterThan(300);
    await page.close();
  });
});

describe('the list', () => {
  test('is searched and filtered, tells how many fit, and is found again by its address', async () => {
    const page = await browser.page(`${server.url}/review`);
    await page.locator('.visit-card').first().waitFor();
    await page.getByRole('searchbox').fill('fan section weak');
    await page.getByText('1 visit', { exact: true }).waitFor();
    expect(await page.locator('.visit-card').textContent()).toContain('capacitor fan section weak');
    await page.getByText('Filters', { exact: true }).click();
    await page.getByRole('combobox', { name: 'State' }).selectOption('running');
    await page.getByText('No visit fits').waitFor();
    await page.getByRole('combobox', { name: 'State' }).selectOption('closed');
    await page.reload();
    await page.getByText('1 visit', { exact: true }).waitFor();
    await page.locator('.visit-card').click();
    await page.locator('main.review[data-level="true"][data-drawn]').waitFor();
    await page.goBack();
    expect(await page.getByRole('searchbox').inputValue()).toBe('fan section weak');
    await page.getByRole('button', { name: 'Clear all' }).click();
    await expect.poll(() => page.locator('.visit-card').count()).toBeGreaterThan(3);
    await picture(page, 'review-list');
    await page.close();
  });

  test('says that the server is away, and what to do', async () => {
    const page = await browser.page(`${server.url}/review`);
    await page.locator('.visit-card').first().waitFor();
    await page.route('**/api/list?**', (route) => route.abort());
    await page.getByRole('searchbox').fill('anything');
    await page.getByText('The server cannot be reached').waitFor();
    await page.close();
    browser.errors.length = 0;
  });
});

describe('all visits together', () => {
  test('are counted in tables, each with its chart and its CSV', async () => {
    const page = await browser.page(`${server.url}/fleet`);
    const found = page.locator('section[data-table="findings"]');
    await found.getByRole('cell', { name: 'capacitor fan section weak' }).waitFor();
    const [charts, tables] = [await page.locator('.bar-chart').count(), await page.locator('.fleet table').count()];
    expect(charts).toBe(tables);
    const shown = await page
      .locator('section[data-table]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-table')));
    for (const table of ['findings', 'parts', 'ages', 'months', 'repeats', 'steps', 'misheard'])
      expect(shown).toContain(table);
    const [download] = await Promise.all([page.waitForEvent('download'), found.getByText('Take away as CSV').click()]);
    expect(download.suggestedFilename()).toBe('findings.csv');
    await picture(page, 'fleet');
    await page.close();
  });
});

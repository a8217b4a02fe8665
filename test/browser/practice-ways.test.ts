import type { Page } from 'playwright-core';
import { afterEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { keptForOffline, PHONE, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { FILTER_WORDS, Trainee } from './trainee.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer | undefined;
let browser: ReadbackBrowser;

afterEach(async () => {
  await browser.close();
  await server?.stop();
  await folder.remove();
});

async function open(touch = false): Promise<Page> {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: PHONE, touch });
  return browser.page('about:blank');
}

/** Counts what comes from a kind of device, from before the page's own first line on. */
async function countEvents(page: Page, ...kinds: readonly string[]): Promise<() => Promise<number>> {
  await page.addInitScript((all) => {
    Object.assign(globalThis, { countedEvents: 0 });
    for (const kind of all)
      addEventListener(
        kind,
        (event) => {
          // A key that presses a button makes a click of its own, without a pointer.
          const byKey = event instanceof PointerEvent && event.pointerType === '';
          if (event.isTrusted && !byKey) (globalThis as unknown as { countedEvents: number }).countedEvents += 1;
        },
        true,
      );
  }, kinds);
  return () => page.evaluate(() => (globalThis as unknown as { countedEvents: number }).countedEvents);
}

/** What the focus is on, by its words, and whether it can be seen that it is there. */
async function focused(page: Page) {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return undefined;
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const target = element.querySelector('.ladder-target');
    const stroke = target === null ? 'none' : getComputedStyle(target).stroke;
    return {
      words: element.getAttribute('aria-label') ?? element.textContent ?? '',
      tag: element.tagName,
      part: element.closest('.practice-says, .practice-unit, .practice-does')?.className.split(' ').at(-1) ?? '',
      isSeen: (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2) || stroke !== 'none',
    };
  });
}

/** Presses Tab until it stands on something with these words. */
async function tabTo(page: Page, words: string): Promise<void> {
  for (let at = 0; at < 150; at += 1) {
    await page.keyboard.press('Tab');
    if ((await focused(page))?.words.trim() === words) return;
  }
  throw new Error(`Tab does not reach "${words}"`);
}

/** All that can be pressed, written in or scrolled by itself, as the page holds it. */
const reachable = (page: Page) =>
  page.evaluate(
    () =>
      [...document.querySelectorAll('button, input, select, a[href], summary, [tabindex="0"]')].filter(
        (one) => one.checkVisibility() && !(one as HTMLButtonElement).disabled,
      ).length,
  );

describe('an exercise to its debrief', () => {
  test('by the keyboard alone: every key is reached, in the order of the page, and seen', async () => {
    const page = await open();
    const pointed = await countEvents(page, 'pointerdown', 'mousedown', 'click', 'touchstart');
    await page.goto(`${server!.url}/practice?exercise=cooling-36`);
    await page.getByRole('button', { name: 'Begin' }).waitFor();
    const trainee = new Trainee(page);
    await tabTo(page, 'Begin');
    await page.keyboard.press('Enter');
    await trainee.stage('running');
    // Once around the page.
    const seen: NonNullable<Awaited<ReturnType<typeof focused>>>[] = [];
    for (let at = 0; at < 150; at += 1) {
      await page.keyboard.press('Tab');
      const on = await focused(page);
      if (on === undefined) break;
      seen.push(on);
    }
    expect(seen.length).toBe(await reachable(page));
    expect(seen.filter(({ isSeen }) => !isSeen)).toEqual([]);
    const parts = seen.map(({ part }) => ['', 'practice-says', 'practice-unit', 'practice-does'].indexOf(part));
    expect(parts).toEqual(parts.toSorted());
    // Probes are put and taken off by Enter and by the space bar, and the table does the same.
    await tabTo(page, 'Put a probe on leg one: L1');
    await page.keyboard.press('Enter');
    await page.locator('.practice-probes', { hasText: 'One probe on leg one' }).waitFor();
    await page.keyboard.press('Space');
    await page.locator('.practice-probes', { hasText: 'nowhere' }).waitFor();
    await page.keyboard.press('Shift+Tab');
    await tabTo(page, 'customer agreed to the work');
    await trainee.done(() => page.keyboard.press('Enter'));
    await tabTo(page, 'that line cannot be read');
    await trainee.done(() => page.keyboard.press('Space'));
    for (const line of FILTER_WORDS.slice(2)) {
      await page.getByLabel('Say what you do').focus();
      await page.keyboard.type(line);
      await trainee.done(() => page.keyboard.press('Enter'));
    }
    await trainee.stage('debrief');
    // The planner waits until its repair is proven.
    expect(await trainee.count('notProven')).toEqual(['1', '0']);
    expect(await trainee.count('hints')).toEqual(['1', '0']);
    await tabTo(page, 'Another exercise');
    await page.keyboard.press('Enter');
    await page.locator('tr[data-family="cooling"]').waitFor();
    expect(await pointed()).toBe(0);
    expect(browser.errors).toEqual([]);
  }, 120_000);

  test('by touch alone: keys of the moment, probes on the drawing, a repair, its proof and the close', async () => {
    const page = await open(true);
    const typed = await countEvents(page, 'keydown', 'keypress');
    await page.goto(`${server!.url}/practice?exercise=cooling-36`);
    await page.getByRole('button', { name: 'Begin' }).tap();
    const trainee = new Trainee(page);
    await trainee.stage('running');
    await trainee.tap('customer agreed to the work', 'that line cannot be read', 'meter is category three');
    await trainee.tap(
      'Outdoor air, temperature',
      'Return air, temperature',
      'thermostat is calling for cooling',
      'Look',
    );
    expect(await trainee.told('eyes')).toMatch(/fan is turning/);
    // Volts between two terminals of the drawing.
    await trainee.tap('Put a probe on leg one: L1', 'Put a probe on ground: GND');
    expect(await page.locator('.practice-probes').textContent()).toBe('Probes: leg one and ground.');
    await trainee.tap('Read the meter', 'None yet', 'Live – I have it');
    expect(await trainee.told('meter')).toMatch(/^Meter \d+ V$/);
    await trainee.tap('Look at', 'Listen: blower', 'None yet', 'Look: filter', 'Filter dirty');
    expect(await trainee.told('eyes')).toMatch(/filter is dirty/);
    await trainee.tap('Clamp, thermometer, gauges', 'Supply air, temperature', 'Filter dirty', 'Hint');
    await trainee.tap('Look at', 'Look: filter', 'Filter dirty');
    expect(await page.locator('.practice-talk').textContent()).toMatch(/Finding: filter dirty/);
    await trainee.tap('Repair', 'Air filter');
    expect(await trainee.told('visit')).toBeTruthy();
    await trainee.tap('Look', 'Compressor, amps');
    // Who reads it behind its whole caution has acknowledged that; while it is being spoken it waits for a key.
    if ((await trainee.key('I have it').count()) > 0) await trainee.tap('I have it');
    await trainee.tap('Outdoor fan, amps');
    for (let waits = 0; (await trainee.key('Let 5 minutes pass').count()) > 0 && waits < 6; waits += 1)
      await trainee.tap('Let 5 minutes pass');
    await trainee.tap('Return air, temperature', 'Supply air, temperature');
    expect(await smallestKeys(page)).toBeGreaterThanOrEqual(121);
    await trainee.tap('Finish the visit');
    await trainee.stage('debrief');
    expect(await page.locator('[data-run="you"]').textContent()).toMatch(/Visit closed/);
    expect(await typed()).toBe(0);
    expect(browser.errors).toEqual([]);
  }, 120_000);

  test('with no network and no server, once its page was loaded', async () => {
    const page = await open();
    await page.goto(`${server!.url}/practice`);
    await keptForOffline(page);
    const { url } = server!;
    await server!.stop();
    server = undefined;
    await browser.context.setOffline(true);
    const offline = await browser.page('about:blank');
    const trainee = new Trainee(offline);
    await trainee.begin(url, 'motors-411');
    await trainee.type('outdoor air', 'return air', 'thermostat is calling', 'look at the fan', 'leg one to ground');
    await trainee.type('none yet', 'live');
    expect(await trainee.told('meter')).toMatch(/^Meter \d+ V$/);
    await trainee.type('give up');
    await trainee.stage('debrief');
    expect(Number(await offline.locator('[data-run="planner"]').getAttribute('data-count'))).toBeGreaterThan(50);
    await trainee.press('Another exercise');
    expect(await offline.locator('tr[data-family="motors"] td').first().textContent()).toBe('1');
  }, 120_000);
});

/** The least side of what is pressed at the unit, in CSS pixels: 20 mm on a phone whose CSS pixel is 1/6.05 mm are 121. */
async function smallestKeys(page: Page): Promise<number> {
  return page.evaluate(() =>
    Math.min(
      ...[...document.querySelectorAll('main.practice .key, .ladder-target')]
        .filter((key) => key.checkVisibility())
        .map((key) => key.getBoundingClientRect().height),
    ),
  );
}

import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { keptForOffline, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { onlyVisit, servedRecord, standingReadings } from './served-record.ts';
import { Technician } from './technician.ts';

/** A visit up to a proof of absence of voltage: corrections, cautions, a refusal and a question are on the way. */
const SENTENCES = [
  'outdoor air ninety four degrees',
  'return air eighty degrees',
  'thermostat is calling',
  'outdoor fan is not turning',
  'compressor runs then trips',
  'live',
  'leg one to ground one eighteen',
  'leg two to ground one twenty nine',
  'correction one nineteen',
  'leg one to leg two two forty one',
  'fan common to fan run twelve ohms',
  'thermostat is not calling',
  'live',
  'outdoor disconnect is pulled and locked',
  'live',
  'meter two forty zero zero zero zero zero zero meter two forty',
];

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeEach(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
});
afterEach(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** The same sentences without any mishap: what every record of this file must come to. */
async function undisturbed(): Promise<{ readings: readonly string[]; energy: object; refused: number }> {
  const page = await browser.page(`${server.url}/?visits`);
  const technician = new Technician(page);
  await technician.openVisit('Undisturbed', 'does not cool');
  for (const sentence of SENTENCES) await technician.type(sentence);
  await technician.sent();
  const { folded } = await servedRecord(server.url, await onlyVisit(server.url));
  await page.close();
  return { readings: standingReadings(folded), energy: folded.energy, refused: folded.refused.length };
}

/** Dice that fall alike in every run. */
function seededDice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Opens the page again at the visit that is open, and waits until it has taken it up. */
async function takenUp(page: Page): Promise<Technician> {
  await page.locator('main.visit').waitFor();
  const technician = new Technician(page);
  await technician.settled();
  return technician;
}

/** Types the sentence again unless the record already holds it: its writing may have come before or after the mishap. */
async function typeUnlessHeard(technician: Technician, sentence: string, before: number): Promise<void> {
  if ((await technician.heardCount()) > before) return;
  // The page held it and gave it back: it needs only to be sent.
  const givenBack = await technician.page.locator('#type-line').inputValue();
  expect(['', sentence]).toContain(givenBack);
  if (givenBack === '') return technician.type(sentence);
  await technician.page.locator('#type-line').press('Enter');
  await technician.settled();
}

describe('a visit outlasts what befalls the page', () => {
  test('ten reloads at random moments change nothing', async () => {
    const expected = await undisturbed();
    await browser.close();
    await server.stop();
    await folder.remove();
    folder = await scratch();
    server = await startServer(`${folder.path}/data`);
    browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
    const dice = seededDice(20_260_615);
    const page = await browser.page(server.url);
    let technician = new Technician(page);
    await technician.openVisit('Reloaded', 'does not cool');
    const cuts = new Set<number>();
    while (cuts.size < 10) cuts.add(Math.floor(dice() * SENTENCES.length));
    for (const [index, sentence] of SENTENCES.entries()) {
      if (!cuts.has(index)) {
        await technician.type(sentence);
        continue;
      }
      const before = await technician.heardCount();
      await technician.send(sentence);
      await page.waitForTimeout(dice() * 120);
      await page.reload();
      technician = await takenUp(page);
      await typeUnlessHeard(technician, sentence, before);
    }
    await technician.sent();
    const { folded, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect({ readings: standingReadings(folded), energy: folded.energy, refused: folded.refused.length }).toEqual(
      expected,
    );
  }, 180_000);

  test('killed in mid-visit, the browser comes back to the same place with all that was written', async () => {
    const page = await browser.page(server.url);
    const technician = new Technician(page);
    await technician.openVisit('Killed', 'does not cool');
    for (const sentence of SENTENCES.slice(0, 9)) await technician.type(sentence);
    await technician.sent();
    const visit = await onlyVisit(server.url);
    const before = await servedRecord(server.url, visit);
    await server.kill();
    await technician.type(SENTENCES[9] as string);
    await browser.kill();
    server = await startServer(`${folder.path}/data`, server.port);
    browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
    const again = await takenUp(await browser.page(server.url));
    await again.sent();
    for (const sentence of SENTENCES.slice(10)) await again.type(sentence);
    await again.sent();
    const after = await servedRecord(server.url, visit);
    expect(after.flaw).toBeUndefined();
    expect(after.events.slice(0, before.events.length)).toMatchObject(
      before.events.map(({ seq, hash }) => ({ seq, hash })),
    );
    expect(standingReadings(after.folded)).toContain('L1–L2 241 V');
    expect(after.folded.energy['outdoor-load']).toBe('reads-dead');
  }, 120_000);

  test('after the first load the visit runs without the server, from a cold start, and is sent when it is back', async () => {
    const first = await browser.page(server.url);
    await keptForOffline(first);
    await server.stop();
    await browser.close();
    browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile` });
    const page = await browser.page(server.url);
    const technician = new Technician(page);
    await technician.openVisit('Cellar', 'does not cool');
    for (const sentence of SENTENCES) await technician.type(sentence);
    expect(await technician.energy('outdoor-load')).toBe('reads-dead');
    const unsent = Number(await page.locator('[data-unsent]').getAttribute('data-unsent'));
    expect(unsent).toBeGreaterThan(50);
    await picture(page, 'visit-without-server');
    await page.getByRole('button', { name: 'ear off' }).click();
    await page.locator('[data-ear="listening"]').waitFor({ timeout: 30_000 });
    server = await startServer(`${folder.path}/data`, server.port);
    await page.locator('[data-link]').click();
    await technician.sent();
    const { events, flaw } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(events.length).toBeGreaterThanOrEqual(unsent);
  }, 120_000);

  test('a second tab shows the visit, writes nothing, and takes it up when the first is closed', async () => {
    const first = await browser.page(server.url);
    const technician = new Technician(first);
    await technician.openVisit('Two tabs', 'does not cool');
    await technician.type('outdoor air ninety four degrees');
    const second = await browser.page(server.url);
    await second.locator('[data-other-tab]').waitFor();
    expect(await second.locator('#type-line').count()).toBe(0);
    await technician.type('return air eighty degrees');
    await second.getByText('return air').first().waitFor();
    await picture(second, 'visit-other-tab');
    await first.close();
    const heir = await takenUp(second);
    await heir.type('thermostat is calling');
    await heir.sent();
    const { folded, flaw, events } = await servedRecord(server.url, await onlyVisit(server.url));
    expect(flaw).toBeUndefined();
    expect(folded.heard.map((line) => line.text)).toEqual([
      'outdoor air ninety four degrees',
      'return air eighty degrees',
      'thermostat is calling',
    ]);
    expect(new Set(events.map((event) => event.device)).size).toBe(1);
  });
});

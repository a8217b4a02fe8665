import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { LIGHTS, TEXT_SIZES } from '../../client/screens/session/screen-settings.ts';
import { accessFaults, cutOff, overflow, overlaps, redWithoutDanger } from './look-over.ts';
import { cutLabels, cutTexts, overlappingLabels, strayDanger } from './look-over-review.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Trainee } from './trainee.ts';

const SIZES = [
  { width: 320, height: 568 },
  { width: 390, height: 844 },
  { width: 844, height: 390 },
  { width: 1280, height: 800 },
] as const;
/** 20 mm on a phone whose CSS pixel is 1/6.05 mm, as on the technician's page. */
const GLOVE = 121;
const FOLDER = join(PROJECT_ROOT, 'test-results/screens');

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;
let page: Page;
let trainee: Trainee;

beforeAll(async () => {
  await mkdir(FOLDER, { recursive: true });
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: SIZES[1] });
  page = await browser.page('about:blank');
  trainee = new Trainee(page);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** Keys and terminals that a glove at the unit does not meet. */
const smallKeys = () =>
  page.evaluate(
    (least) =>
      [...document.querySelectorAll('main.running .key, main.running .ladder-target')]
        .filter((key) => key.checkVisibility())
        .map((key) => ({ words: key.textContent, box: key.getBoundingClientRect() }))
        .filter(({ box }) => box.width < least || box.height < least)
        .map(({ words, box }) => `${words}: ${Math.round(box.width)} × ${Math.round(box.height)}`),
    GLOVE,
  );

/** What is wrong with the screen as it stands, at each size with each size of text, in each light. */
async function lookOver(name: string): Promise<readonly string[]> {
  const faults: string[] = [];
  const isReplay = name === 'debrief';
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const where = `practice-${name}-${size.width}x${size.height}`;
    const note = (light: string, what: string, found: readonly string[]) =>
      faults.push(...found.map((one) => `${where} ${light}: ${what}: ${one}`));
    for (const text of TEXT_SIZES) {
      await show('light', text);
      if (isReplay) await page.waitForTimeout(150);
      const wide = await overflow(page);
      if (wide > 0) faults.push(`${where} ${text}: sticks out by ${wide}`);
      note(text, 'cut off', await cutOff(page));
      // The lines of a replay are the review's, and held at its size of text.
      if (text === 'normal' || !isReplay) note(text, 'text cut', await cutTexts(page));
      note(text, 'overlaps', await overlaps(page));
      note(text, 'label cut', await cutLabels(page));
      note(text, 'labels overlap', await overlappingLabels(page));
      note(text, 'small', await smallKeys());
    }
    for (const light of LIGHTS) {
      await show(light, 'normal');
      note(light, 'access', await accessFaults(page));
      note(light, 'red', await (isReplay ? strayDanger(page) : redWithoutDanger(page)));
      await page.screenshot({ path: join(FOLDER, `${where}-${light}.png`), fullPage: true });
    }
  }
  await show('light', 'normal');
  return faults;
}

async function show(light: string, text: string): Promise<void> {
  await page.evaluate(
    ([light, text]) => {
      document.documentElement.dataset['light'] = light;
      document.documentElement.dataset['text'] = text;
    },
    [light, text] as const,
  );
}

test('before an exercise, with and without a wrong address', async () => {
  await page.goto(`${server.url}/practice`);
  await page.getByRole('button', { name: 'Begin' }).waitFor();
  const faults = [...(await lookOver('start'))];
  await page.goto(`${server.url}/practice?exercise=engines-7`);
  await page.getByRole('alert').waitFor();
  faults.push(...(await lookOver('wrong')));
  expect(faults).toEqual([]);
}, 600_000);

test('an exercise in its states, held, stopped by a safety error, and looked back upon', async () => {
  await trainee.begin(server.url, 'motors-411');
  const faults = [...(await lookOver('begun'))];
  await trainee.type('outdoor air', 'return air', 'thermostat is calling', 'look at the fan', 'look at the compressor');
  faults.push(...(await lookOver('suspect')));
  await trainee.type('two');
  faults.push(...(await lookOver('made')));
  await trainee.type('leg one to ground', 'none yet');
  for (const group of ['Look at', 'Clamp, thermometer, gauges', 'Power and call', 'Repair']) {
    await trainee.press(group);
    faults.push(...(await lookOver(`caution-${group.slice(0, 5).toLowerCase().trim()}`)));
  }
  await trainee.press('Repair');
  for (const section of ['Outdoor unit', 'Indoor unit', '24 volts']) {
    await trainee.press(section);
    faults.push(...(await lookOver(section.replaceAll(' ', '-').toLowerCase())));
  }
  await trainee.press('Table');
  faults.push(...(await lookOver('table')));
  await trainee.press('Drawing');
  await trainee.type('live', 'hint', 'thermostat is not calling', 'outdoor disconnect is pulled and locked');
  await trainee.type('capacitor is discharged');
  await page.locator('[data-asked="held"]').waitFor();
  faults.push(...(await lookOver('held')));
  await trainee.type('go on', 'outdoor disconnect is back in', 'ohms leg one to leg two');
  await trainee.stage('debrief');
  await page.locator('[data-run="planner"]').waitFor();
  faults.push(...(await lookOver('debrief')));
  expect(faults).toEqual([]);
}, 1_800_000);

test('how somebody gets on', async () => {
  await page.goto(`${server.url}/practice`);
  await page.locator('tr[data-family="motors"]').waitFor();
  expect(await lookOver('progress')).toEqual([]);
}, 600_000);

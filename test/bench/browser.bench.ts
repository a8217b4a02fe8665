import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { scriptsOf, zippedKilobytes } from '../browser/built-scripts.ts';
import { type MicrophoneSound, microphoneSound } from '../browser/microphone-sound.ts';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { keptForOffline, ReadbackBrowser, scratch, startServer } from '../browser/readback-browser.ts';
import { libraryLines, Technician } from '../browser/technician.ts';
import { type Bench, type Figure, median, quantile } from './figures.ts';
import { slowDown } from './slow-down.ts';
import { workerStepFigures } from './worker-steps.ts';

/** The page in a real browser. Options: sentences=14 (of the library visit, spoken at each speed) slow=4. */
export const bench: Bench = async (options, progress) => {
  const sentences = Number(options.get('sentences') ?? 14);
  const times = Number(options.get('slow') ?? 4);
  const figures: Figure[] = sizes();
  progress('first and second load');
  figures.push(...(await loads()));
  progress('steps of the diagnosis in its worker');
  figures.push(...(await workerStepFigures(times)));
  for (const slow of [1, times]) {
    progress(`${sentences} sentences by microphone${slow === 1 ? '' : `, the browser slowed ${slow} times`}`);
    figures.push(...(await spoken(sentences, slow)));
  }
  return figures;
};

/** What comes over the wire, from the built files: scripts and styles of each route gzipped, the model as it is served. */
function sizes(): Figure[] {
  const web = join(PROJECT_ROOT, '.build/web');
  const assets = readdirSync(join(web, 'assets'));
  const zipped = (pattern: RegExp) => zippedKilobytes(assets.filter((name) => pattern.test(name)));
  const page = (name: string) => zippedKilobytes(scriptsOf('index', name));
  const model = readdirSync(join(web, 'model/en-us')).reduce(
    (sum, name) => sum + readFileSync(join(web, 'model/en-us', name)).length,
    0,
  );
  return [
    { name: 'technician: scripts, gzip', value: page('technician-page'), unit: 'kB', against: 'aim ≤ 150' },
    { name: 'technician: workers and worklet, gzip', value: zipped(/(worker|worklet).*\.js$/), unit: 'kB' },
    { name: 'technician: WebAssembly, gzip', value: zipped(/\.wasm$/), unit: 'kB' },
    { name: 'review: scripts, gzip', value: page('review-page'), unit: 'kB', against: 'limit 300' },
    { name: 'all visits together: scripts, gzip', value: page('fleet-page'), unit: 'kB', against: 'limit 300' },
    { name: 'model, as served', value: model / 1e6, unit: 'MB' },
  ];
}

async function loads(): Promise<Figure[]> {
  const folder = await scratch();
  const server = await startServer(`${folder.path}/data`);
  try {
    const first = await oneLoad(server.url, `${folder.path}/profile`);
    const second = await oneLoad(server.url, `${folder.path}/profile`);
    return [
      { name: 'first load: to the form', value: first.formMs, unit: 'ms' },
      { name: 'first load: ear switched on to listening', value: first.earMs, unit: 'ms' },
      { name: 'first load: over the wire', value: first.bytes / 1e6, unit: 'MB' },
      {
        name: 'second load: to the form',
        value: second.formMs,
        unit: 'ms',
        against: share(second.formMs, first.formMs),
      },
      {
        name: 'second load: ear switched on to listening',
        value: second.earMs,
        unit: 'ms',
        against: share(second.earMs, first.earMs),
      },
      { name: 'second load: over the wire', value: second.bytes / 1e6, unit: 'MB' },
    ];
  } finally {
    await server.stop();
    await folder.remove();
  }
}

const share = (value: number, of: number) => `${(value / of).toFixed(2)} of the first`;

/** One start of the browser: to the form, then to a listening ear, and what was fetched for both. */
async function oneLoad(url: string, profile: string): Promise<{ formMs: number; earMs: number; bytes: number }> {
  const browser = await ReadbackBrowser.open({ profile });
  try {
    const page = await browser.page('about:blank');
    const bytes = countBytes(browser);
    const started = performance.now();
    await page.goto(`${url}/?visits`);
    await page.getByLabel('Site').waitFor();
    const formMs = performance.now() - started;
    const technician = new Technician(page);
    await technician.openVisit('Bench', 'does not cool');
    const switched = performance.now();
    await switchEarOn(page);
    const earMs = performance.now() - switched;
    await page.waitForLoadState('networkidle');
    await keptForOffline(page);
    return { formMs, earMs, bytes: bytes() };
  } finally {
    await browser.close();
  }
}

/** Bytes of all answers, of page, workers and service worker, as the browser counted them on the wire. */
function countBytes(browser: ReadbackBrowser): () => number {
  let bytes = 0;
  browser.context.on('requestfinished', async (request) => {
    const response = await request.response().catch(() => null);
    if (response === null || response.fromServiceWorker()) return;
    const sizes = await request.sizes().catch(() => undefined);
    bytes += (sizes?.responseBodySize ?? 0) + (sizes?.responseHeadersSize ?? 0);
  });
  return () => bytes;
}

async function switchEarOn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'ear off' }).click();
  await page.locator('[data-ear="listening"]').waitFor({ timeout: 60_000 });
}

/** In page or worker: milliseconds of what it measured under a name. */
const durationsOf = (name: string): number[] => performance.getEntriesByName(name).map((entry) => entry.duration);

const stepFigures = (name: string, steps: readonly number[]): Figure[] => [
  { name: `${name}, median`, value: median(steps), unit: 'ms' },
  {
    name: `${name}, p95`,
    value: quantile(steps, 0.95),
    unit: 'ms',
    against: `aim ≤ 20 slowed 4 times; of ${steps.length}`,
  },
];

async function spoken(sentences: number, slow: number): Promise<Figure[]> {
  const folder = await scratch();
  const server = await startServer(`${folder.path}/data`);
  const lines = libraryLines().slice(0, sentences);
  const sound = await microphoneSound(`${folder.path}/microphone.wav`, lines);
  const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, sound: sound.path });
  try {
    const page = await browser.page(server.url);
    const technician = new Technician(page);
    await technician.openVisit('Bench', 'does not cool');
    const release = slow === 1 ? () => undefined : await slowDown(browser, slow);
    await switchEarOn(page);
    const verdicts = await listenThrough(page, sound);
    release();
    const heard = await technician.heardCount();
    const steps = await page.evaluate(durationsOf, 'readback.assessed');
    const inWorker = await Promise.all(page.workers().map((one) => one.evaluate(durationsOf, 'readback.diagnosed')));
    const which = slow === 1 ? 'normal speed' : `slowed ${slow} times`;
    const memory = slow === 1 ? await memoryFigures(page, browser, sentences) : [];
    return [
      { name: `${which}: last loud sample to verdict, median`, value: median(verdicts), unit: 'ms' },
      {
        name: `${which}: last loud sample to verdict, p95`,
        value: quantile(verdicts, 0.95),
        unit: 'ms',
        against: 'aim ≤ 450 on the first pass, ≤ 1,200 on a second',
      },
      // The first answers hold the building of the table.
      ...stepFigures(`${which}: update and next test, in the worker`, inWorker.flat().slice(-steps.length)),
      ...stepFigures(`${which}: the same with the way there and back`, steps),
      { name: `${which}: sentences heard`, value: heard, unit: '', against: `of ${sentences} spoken` },
      ...memory,
    ];
  } finally {
    await browser.close();
    await server.stop();
    await folder.remove();
  }
}

/** Waits until the sound is over; returns the page's own timings from the last loud sample to the verdict on the page. */
async function listenThrough(page: Page, sound: MicrophoneSound): Promise<readonly number[]> {
  await page.waitForTimeout(sound.seconds * 1000 + 3_000);
  return page.evaluate(() => performance.getEntriesByName('readback.heard').map((entry) => entry.duration));
}

async function memoryFigures(page: Page, browser: ReadbackBrowser, sentences: number): Promise<Figure[]> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('Performance.enable');
  const { metrics } = await session.send('Performance.getMetrics');
  const heap = metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? Number.NaN;
  const renderers = (await browser.processes()).filter(({ type }) => type === 'renderer');
  const resident = Math.max(...renderers.map(({ id }) => residentBytes(id)));
  return [
    { name: `after ${sentences} sentences: heap of the page`, value: heap / 1e6, unit: 'MB' },
    { name: 'after that: whole process with recogniser and diagnosis', value: resident / 1e6, unit: 'MB' },
  ];
}

/** Linux only. */
function residentBytes(process: number): number {
  const kilobytes = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${process}/status`, 'utf8'))?.[1];
  return Number(kilobytes) * 1024;
}

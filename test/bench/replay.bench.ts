import type { Page } from 'playwright-core';
import { putVisit } from '../browser/put-visit.ts';
import { DESK, ReadbackBrowser, scratch, startServer } from '../browser/readback-browser.ts';
import { type Opened, openedAfter, scrubCharts, scrubSlider } from '../browser/scrub-page.ts';
import { type Bench, type Figure, median, quantile } from './figures.ts';
import { longVisit } from './long-visit.ts';

/** A long visit in the review, in a real browser. Options: events=10000 loads=7 seconds=4. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  const [events, loads, seconds] = [number('events', 10_000), number('loads', 7), number('seconds', 4)];
  const folder = await scratch();
  const server = await startServer(`${folder.path}/data`);
  const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: DESK });
  try {
    progress(`putting ${events} events on the server`);
    await putVisit(server.url, 'long', longVisit(events));
    const url = `${server.url}/review?visit=long`;
    const page = await browser.page(url);
    await shown(page);
    progress(`opening it ${loads} times`);
    const cpu = await processorOf(page);
    const [opened, worked]: [Opened[], number[]] = [[], []];
    for (let load = 0; load < loads; load += 1) {
      await page.goto('about:blank');
      const before = await cpu();
      await page.goto(url, { waitUntil: 'commit' });
      await shown(page);
      opened.push(await page.evaluate(openedAfter));
      worked.push((await cpu()) - before);
    }
    progress(`scrubbing for ${seconds} s by the slider, then over the charts`);
    const scrub = async (move: typeof scrubSlider) => {
      const before = await cpu();
      const intervals = await page.evaluate(move, seconds);
      return { intervals, workMs: ((await cpu()) - before) / intervals.length };
    };
    const bySlider = await scrub(scrubSlider);
    const byCharts = await scrub(scrubCharts);
    const figures: Figure[] = [
      {
        name: `a visit of ${events} events: from navigation to its first screen, median`,
        value: median(opened.map(({ open }) => open)),
        unit: 'ms',
        against: `limit 500; the five answers, talk, moment, player; of ${loads}, program cached`,
      },
      { name: 'the longest of these', value: Math.max(...opened.map(({ open }) => open)), unit: 'ms' },
      {
        name: 'from navigation to shown whole, charts and tables too, median',
        value: median(opened.map(({ whole }) => whole)),
        unit: 'ms',
        against: 'the mark of earlier figures',
      },
      {
        name: 'processor time of the page’s own thread for all of that, median',
        value: median(worked),
        unit: 'ms',
        against: 'what it takes on a machine that does nothing else',
      },
      {
        name: 'from its last event to the frame that shows its first screen, median',
        value: median(opened.map(({ read, open }) => open - read)),
        unit: 'ms',
      },
      ...scrubFigures('scrubbing by the slider', bySlider),
      ...scrubFigures('scrubbing over the charts', byCharts),
    ];
    return figures;
  } finally {
    await browser.close();
    await server.stop();
    await folder.remove();
  }
};

const shown = (page: Page) => page.locator('main.review[data-drawn]').waitFor({ timeout: 60_000 });

/** Milliseconds of processor time that the page's own thread has worked, other programs' turns left out. */
async function processorOf(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
  };
}

interface Scrubbed {
  readonly intervals: readonly number[];
  readonly workMs: number;
}

function scrubFigures(name: string, { intervals, workMs }: Scrubbed): Figure[] {
  return [
    {
      name: `${name}: frames a second, median`,
      value: 1000 / median(intervals),
      unit: '',
      against: `limit 50; of ${intervals.length} frames`,
    },
    { name: `${name}: processor time a frame`, value: workMs, unit: 'ms', against: '50 frames a second leave 20' },
    { name: `${name}: frames a second, one in twenty slower`, value: 1000 / quantile(intervals, 0.95), unit: '' },
  ];
}

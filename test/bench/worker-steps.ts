import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Evidence } from '../../client/diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../../client/diagnosis/make-diagnosis.ts';
import { Dice } from '../../client/practice/plant/dice.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { ReadbackBrowser, scratch, startServer } from '../browser/readback-browser.ts';
import { drawCase, profileFor } from '../simulator/draw-case.ts';
import { drawRatings } from '../simulator/hidden-unit.ts';
import { runDiagnosis } from '../simulator/run-case.ts';
import { type Figure, median, quantile } from './figures.ts';
import { slowDown } from './slow-down.ts';

interface Visits {
  readonly unit: UnitProfile;
  /** What the diagnosis was told at each step, one visit after the other. */
  readonly steps: readonly (readonly Evidence[])[];
}

/** What whole visits of the judging simulator ask the diagnosis, hidden faults of one design. */
function simulatedVisits(cases: number): Visits {
  const ratings = drawRatings(new Dice(11));
  const unit = profileFor(ratings, 'bench', 'matched');
  const diagnosis = makeDiagnosis(unit);
  const steps: (readonly Evidence[])[] = [];
  const listening: typeof diagnosis = {
    ...diagnosis,
    assess: (evidence, parked) => {
      if (evidence.length > 0) steps.push([...evidence]);
      return diagnosis.assess(evidence, parked);
    },
  };
  for (let c = 0; c < cases; c += 1) runDiagnosis(listening, drawCase(ratings, 11_000 + c, 'matched', 1), 0.02);
  return { unit, steps };
}

/** As much of the browser's own worker as is used here: the types of Node name another one. */
interface PageWorker {
  addEventListener(type: 'message', listener: (message: { readonly data: { readonly number?: number } }) => void): void;
  postMessage(question: unknown): void;
}
interface PageWithWorker {
  readonly Worker: new (file: string, options: { readonly type: 'module' }) => PageWorker;
  /** Milliseconds there and back. */
  ask: (evidence: unknown) => Promise<number>;
}

/** Asks the built worker of the page, alone on its page, one step after the other; milliseconds there and back. */
async function askWorker(page: Page, file: string, { unit, steps }: Visits, slow: () => Promise<() => void>) {
  await page.evaluate(
    async ({ file: from, unit: of }) => {
      const here = globalThis as unknown as PageWithWorker;
      const worker = new here.Worker(from, { type: 'module' });
      const open = new Map<number, () => void>();
      worker.addEventListener('message', ({ data }) => open.get(data.number ?? 0)?.());
      here.ask = (evidence) =>
        new Promise((resolve) => {
          const number = open.size + 1;
          const began = performance.now();
          open.set(number, () => resolve(performance.now() - began));
          worker.postMessage({ number, unit: of, evidence, parked: [] });
        });
      await here.ask([]);
    },
    { file, unit },
  );
  // The table is there; the worker warms up in between.
  await page.waitForTimeout(3_000);
  const release = await slow();
  const taken = await page.evaluate(async (all) => {
    const { ask } = globalThis as unknown as PageWithWorker;
    const milliseconds: number[] = [];
    for (const evidence of all) {
      await new Promise((resolve) => setTimeout(resolve, 100));
      milliseconds.push(await ask(evidence));
    }
    return milliseconds;
  }, steps);
  release();
  return taken;
}

/** Update and next test in Chromium: the worker of the page by itself, whole simulated visits. */
export async function workerStepFigures(times: number): Promise<Figure[]> {
  const visits = simulatedVisits(12);
  const name = readdirSync(join(PROJECT_ROOT, '.build/web/assets')).find((one) => /^diagnosis-worker.*\.js$/.test(one));
  const folder = await scratch();
  const server = await startServer(`${folder.path}/data`);
  const figures: Figure[] = [];
  try {
    for (const slow of [1, times]) {
      const browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile-${slow}` });
      const page = await browser.page(server.url);
      const start = () => (slow === 1 ? Promise.resolve(() => undefined) : slowDown(browser, slow));
      const taken = await askWorker(page, `/assets/${name}`, visits, start);
      await browser.close();
      const which = slow === 1 ? 'worker alone' : `worker alone, slowed ${slow} times`;
      figures.push(
        { name: `${which}: update and next test there and back, median`, value: median(taken), unit: 'ms' },
        {
          name: `${which}: p95 of ${taken.length} steps`,
          value: quantile(taken, 0.95),
          unit: 'ms',
          against: `aim ≤ ${slow === 1 ? 5 : 20}`,
        },
      );
    }
    return figures;
  } finally {
    await server.stop();
    await folder.remove();
  }
}

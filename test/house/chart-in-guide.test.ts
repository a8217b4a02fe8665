import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { SampleRunner } from './run-samples.ts';
import { chartIn, withChart } from './sample-outputs.ts';

const guide = readFileSync(join(PROJECT_ROOT, 'client/visit/README.md'), 'utf8');
const runner = new SampleRunner();
afterAll(() => runner.stop());

it('the guide holds the statechart that the tool prints', async () => {
  const printed = await runner.output('npm run -s chart', Number.POSITIVE_INFINITY);
  expect(printed).toMatch(/^stateDiagram-v2\n/);
  expect(chartIn(guide)).toBe(printed);
});

it('a chart is put in place of the old one and leaves the rest of the text alone', () => {
  const changed = withChart(guide, 'stateDiagram-v2\n[*] --> one\n');
  expect(chartIn(changed)).toBe('stateDiagram-v2\n[*] --> one\n');
  expect(withChart(changed, chartIn(guide) ?? '')).toBe(guide);
});

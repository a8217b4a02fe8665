import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { SampleRunner } from './run-samples.ts';
import { chartIn, excerpt, samplesIn, textsWithSamples, withChart, withoutChance } from './sample-outputs.ts';

/** `npm run samples`: runs what every README.md and the guide show, and puts what came of it in place where it differs. */
const runner = new SampleRunner();
try {
  for (const file of textsWithSamples()) {
    const path = join(PROJECT_ROOT, file);
    const before = readFileSync(path, 'utf8');
    let after = before;
    // From the end on, so that places before it stay where they are.
    for (const sample of samplesIn(before).toReversed()) {
      const now = excerpt(await runner.output(sample.command, sample.to), sample);
      if (withoutChance(now) === withoutChance(sample.shown)) continue;
      after = after.slice(0, sample.start) + now + after.slice(sample.end);
      process.stdout.write(`${file}: ${sample.command}\n`);
    }
    if (chartIn(before) !== undefined)
      after = withChart(after, await runner.output('npm run -s chart', Number.POSITIVE_INFINITY));
    if (after !== before) writeFileSync(path, after);
  }
} finally {
  await runner.stop();
}

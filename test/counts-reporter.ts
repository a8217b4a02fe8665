import type { Reporter, TestModule } from 'vitest/node';
import { LONG, SEED } from './how-much.ts';

/** Closes a test run with what was skipped, by name, its kind, its seed, and its real counts, alone on a line. */
export default class CountsReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    const left = new Map<string, number>();
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        counts[state] += 1;
        const [of = ''] = test.fullName.split(' > ');
        if (state === 'skipped') left.set(of, (left.get(of) ?? 0) + 1);
      }
    }
    for (const [of, count] of left) console.log(`\nskipped, ${count}: ${of}`);
    const broken = modules.filter((module) => module.errors().length > 0).length;
    const files = `${modules.length} files${broken > 0 ? `, ${broken} of them did not load` : ''}`;
    const run = LONG ? 'long run' : 'short run; what takes minutes is tried by npm run test:long';
    console.log(
      `\n${files} (${run}; READBACK_SEED=${SEED})\n${counts.passed} passed, ${counts.failed + broken} failed, ${counts.skipped + counts.pending} skipped`,
    );
  }
}

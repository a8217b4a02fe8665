import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { PROMISES } from './promised.ts';
import { type Measured, type Outcome, promisesPage } from './promises-page.ts';
import { FIGURES_FILE } from './tell-figure.ts';

const README = join(PROJECT_ROOT, 'server/README.md');

interface Report {
  readonly testResults: readonly {
    readonly name: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

/**
 * `npm run promises`: runs the tests behind every promise (as often as the short run tries; READBACK_RUN=long: as the
 * long one) and writes what they came to into server/README.md. Exits 1 where one is not kept.
 */
function main(): void {
  const folder = mkdtempSync(join(tmpdir(), 'readback-promises-'));
  const [figures, report] = [join(folder, 'figures.jsonl'), join(folder, 'report.json')];
  const files = [...new Set(PROMISES.flatMap(({ tests }) => tests))];
  try {
    spawnSync(
      process.execPath,
      [
        join(PROJECT_ROOT, 'node_modules/vitest/vitest.mjs'),
        'run',
        '--config',
        'test/vitest.config.ts',
        '--reporter=json',
        `--outputFile=${report}`,
        ...files,
      ],
      { cwd: PROJECT_ROOT, stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, [FIGURES_FILE]: figures } },
    );
    const outcome = outcomeOf(JSON.parse(readFileSync(report, 'utf8')) as Report);
    const measured = existsSync(figures) ? readFigures(readFileSync(figures, 'utf8')) : [];
    const run = process.env['READBACK_RUN'] === 'long' ? 'long' : 'short';
    const page = promisesPage(PROMISES, outcome, measured, run);
    writeFileSync(README, page.into(readFileSync(README, 'utf8')));
    const biome = join(PROJECT_ROOT, 'node_modules/@biomejs/biome/bin/biome');
    spawnSync(process.execPath, [biome, 'format', '--write', README], { cwd: PROJECT_ROOT });
    process.stdout.write(`${page.text}\n`);
    process.exitCode = page.kept ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function outcomeOf({ testResults }: Report): ReadonlyMap<string, Outcome> {
  const outcome = new Map<string, Outcome>();
  // A file that runs on both stores is told of twice.
  for (const { name, assertionResults } of testResults) {
    const file = name.slice(PROJECT_ROOT.length).replace(/^\//, '');
    const { passed, of } = outcome.get(file) ?? { passed: 0, of: 0 };
    const more = assertionResults.filter(({ status }) => status === 'passed').length;
    outcome.set(file, { passed: passed + more, of: of + assertionResults.length });
  }
  return outcome;
}

function readFigures(text: string): readonly Measured[] {
  return text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Measured);
}

main();

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { FIGURES_FILE } from './tell-figure.ts';
import { TRIALS, type Trial } from './trials.ts';

const HELP = `trial: one long trial of the record by itself, with its count at the end.

Usage: npm run trial -- NAME [TRIES]

Trials, each as often as the long run tries it:
${Object.entries(TRIALS)
  .map(([name, { says, tries }]) => `  ${name.padEnd(14)} ${says} (${tries})`)
  .join('\n')}

Exits 0 when nothing was lost or missed; 1 when something was; 2 when used wrongly.
`;

function main(): void {
  const [name = '', count] = process.argv.slice(2);
  const trial = TRIALS[name];
  if (name === '--help') return void process.stdout.write(HELP);
  if (trial === undefined || (count !== undefined && !/^[1-9]\d*$/.test(count))) {
    process.stderr.write(HELP);
    process.exitCode = 2;
    return;
  }
  process.exitCode = run(trial, Number(count ?? trial.tries)) ? 0 : 1;
}

/** Runs the trial's tests in a process of their own; whether they passed and counted what they tried. */
function run(trial: Trial, tries: number): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'readback-trial-'));
  const file = join(folder, 'figures.jsonl');
  const began = performance.now();
  try {
    const { status } = spawnSync(
      process.execPath,
      [
        join(PROJECT_ROOT, 'node_modules/vitest/vitest.mjs'),
        'run',
        '--config',
        'test/vitest.config.ts',
        trial.test,
        ...(trial.only === undefined ? [] : ['-t', trial.only]),
      ],
      {
        cwd: PROJECT_ROOT,
        stdio: 'inherit',
        env: { ...process.env, READBACK_RUN: 'long', READBACK_TRIES: String(tries), [FIGURES_FILE]: file },
      },
    );
    const seconds = (performance.now() - began) / 1_000;
    const figures = existsSync(file) ? readFigures(file) : new Map<string, string>();
    const tried = Number(figures.get(trial.counts));
    for (const figure of trial.figures) process.stdout.write(`${figure}: ${figures.get(figure) ?? 'not told'}\n`);
    const each = tried > 0 ? `, ${((seconds / tried) * 1_000).toFixed(tried > 1_000 ? 2 : 0)} ms each` : '';
    const passed = status === 0 && tried > 0;
    process.stdout.write(`${trial.counts}: ${tried || 'none'} in ${seconds.toFixed(0)} s${each}: `);
    process.stdout.write(passed ? 'held\n' : 'DID NOT HOLD\n');
    return passed;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function readFigures(file: string): ReadonlyMap<string, string> {
  const lines = readFileSync(file, 'utf8').trim().split('\n');
  const figures = lines.map((line) => JSON.parse(line) as { readonly name: string; readonly value: number | string });
  return new Map(figures.map(({ name, value }) => [name, String(value)]));
}

main();

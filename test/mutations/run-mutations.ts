import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PLANTED_FAULTS, type PlantedFault } from './planted-faults.ts';

/**
 * `npm run test:mutations [-- ID …]`: plants each fault in a copy of the sources, builds it, and runs the files of the
 * short run that are said to notice it. Exits 1 where a fault goes unnoticed, or does not even build.
 */
const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const COPIED = ['.build', 'client', 'grammar', 'server', 'test', 'fixtures', 'tsconfig.json', 'package.json'];

interface Outcome {
  readonly fault: PlantedFault;
  /** Files that failed; undefined where the build did. */
  readonly failed: readonly string[] | undefined;
}

function copyOfSources(): string {
  const copy = mkdtempSync(join(tmpdir(), 'readback-mutations-'));
  for (const name of COPIED) cpSync(join(ROOT, name), join(copy, name), { recursive: true, preserveTimestamps: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  return copy;
}

function run(
  copy: string,
  program: string,
  ...args: readonly string[]
): { readonly ok: boolean; readonly out: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join('node_modules', program), ...args], {
    cwd: copy,
    encoding: 'utf8',
    env: { ...process.env, READBACK_RUN: 'short' },
    maxBuffer: 1e9,
  });
  return { ok: status === 0, out: `${stdout}${stderr}` };
}

const build = (copy: string) => run(copy, 'typescript/bin/tsc', '-b');
const buildPages = (copy: string) =>
  run(copy, 'vite/bin/vite.js', 'build', '--config', 'client/screens/node/vite.config.ts', '--logLevel', 'warn');

function plant(copy: string, fault: PlantedFault): Outcome {
  const path = join(copy, fault.file);
  const before = readFileSync(path, 'utf8');
  const places = before.split(fault.from).length - 1;
  if (places !== 1) throw new Error(`${fault.id}: what it replaces stands ${places} times in ${fault.file}`);
  writeFileSync(
    path,
    before.replace(fault.from, () => fault.to),
  );
  try {
    const built = build(copy);
    if (!built.ok) {
      process.stdout.write(built.out);
      return { fault, failed: undefined };
    }
    if (fault.pages === true) buildPages(copy);
    const failed = fault.noticedBy.filter(
      (file) => !run(copy, 'vitest/vitest.mjs', 'run', '--config', 'test/vitest.config.ts', file).ok,
    );
    return { fault, failed };
  } finally {
    writeFileSync(path, before);
  }
}

function told({ fault, failed }: Outcome): string {
  if (failed === undefined) return `${fault.id}: does not build`;
  return failed.length === 0
    ? `${fault.id}: NOT NOTICED (${fault.harm}) by ${fault.noticedBy.join(', ')}`
    : `${fault.id}: noticed by ${failed.join(', ')}`;
}

const asked = process.argv.slice(2);
const unknown = asked.filter((id) => !PLANTED_FAULTS.some((fault) => fault.id === id));
if (unknown.length > 0) {
  const ids = PLANTED_FAULTS.map(({ id }) => id).join(' ');
  process.stderr.write(`No planted fault is called ${unknown.join(' or ')}. Name some of: ${ids}\n`);
  process.exit(2);
}
const copy = copyOfSources();
let missed = 0;
try {
  for (const fault of PLANTED_FAULTS) {
    if (asked.length > 0 && !asked.includes(fault.id)) continue;
    const outcome = plant(copy, fault);
    if (outcome.failed === undefined || outcome.failed.length === 0) missed += 1;
    process.stdout.write(`${told(outcome)}\n`);
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
process.stdout.write(missed === 0 ? 'Every planted fault is noticed by the short run.\n' : `${missed} not noticed.\n`);
process.exitCode = missed === 0 ? 0 : 1;

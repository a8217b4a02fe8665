import { spawn } from 'node:child_process';
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CONDUCT_FAULTS, type ConductFault } from './conduct-faults.ts';

/**
 * `npm run test:conduct [-- RULE …]`: breaks each rule of conduct in a copy of the sources, and tells which of three
 * ways of testing notices: the walk over the machine, the oracle that was written apart from it, the examples. Exits 1
 * where a broken rule goes unnoticed by all of them.
 */
const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const COPIED = ['client', 'grammar', 'server', 'test', 'fixtures', 'tsconfig.json', 'package.json'];

const conduct = readdirSync(join(ROOT, 'test/client/visit')).filter((name) => /^(conduct|typed-orders)/.test(name));
const WAYS: Readonly<Record<'walk' | 'oracle' | 'examples', readonly string[]>> = {
  walk: ['test/client/visit/safety.test.ts'],
  oracle: ['test/oracle/oracle.test.ts'],
  examples: conduct.map((name) => `test/client/visit/${name}`),
};
type Way = keyof typeof WAYS;

function copyOfSources(): string {
  const copy = realpathSync(mkdtempSync(join(tmpdir(), 'readback-conduct-')));
  for (const name of COPIED) cpSync(join(ROOT, name), join(copy, name), { recursive: true, preserveTimestamps: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  return copy;
}

/** The ways that fail, side by side; each stops at the first that fails. A file that does not load fails as one does whose test does. */
async function failing(copy: string): Promise<readonly Way[]> {
  const ways = Object.keys(WAYS) as Way[];
  const passed = await Promise.all(ways.map((way) => passes(copy, WAYS[way])));
  return ways.filter((_, index) => passed[index] !== true);
}

function passes(copy: string, files: readonly string[]): Promise<boolean> {
  const vitest = join('node_modules', 'vitest/vitest.mjs');
  const args = [
    vitest,
    'run',
    '--config',
    'test/vitest.config.ts',
    '--bail=1',
    '--maxWorkers=1',
    '--reporter=dot',
    ...files,
  ];
  const env = { ...process.env, READBACK_RUN: 'short' };
  return new Promise((resolve, reject) => {
    const run = spawn(process.execPath, args, { cwd: copy, env, stdio: 'ignore' });
    run.on('error', reject);
    run.on('exit', (code) => resolve(code === 0));
  });
}

async function noticedBy(copy: string, { rule, file, from, to }: ConductFault): Promise<readonly Way[]> {
  const path = join(copy, file);
  const before = readFileSync(path, 'utf8');
  const places = before.split(from).length - 1;
  if (places !== 1) throw new Error(`${rule}: what it replaces stands ${places} times in ${file}`);
  writeFileSync(
    path,
    before.replace(from, () => to),
  );
  try {
    return await failing(copy);
  } finally {
    writeFileSync(path, before);
  }
}

const asked = process.argv.slice(2);
const faults = CONDUCT_FAULTS.filter(({ rule }) => asked.length === 0 || asked.includes(rule));
const copy = copyOfSources();
const counts: Record<Way, number> = { walk: 0, oracle: 0, examples: 0 };
let missed = 0;
try {
  const before = await failing(copy);
  if (before.length > 0) throw new Error(`${before.join(', ')}: fails before anything is planted`);
  for (const fault of faults) {
    const ways = await noticedBy(copy, fault);
    for (const way of ways) counts[way] += 1;
    if (ways.length === 0) missed += 1;
    process.stdout.write(`${fault.rule}  ${ways.length === 0 ? 'NOT NOTICED' : ways.join(', ')}: ${fault.harm}\n`);
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
const told = (Object.keys(WAYS) as Way[]).map((way) => `${way} ${counts[way]}`).join(', ');
process.stdout.write(`Of ${faults.length} planted faults: ${told}; not noticed ${missed}.\n`);
process.exitCode = missed === 0 ? 0 : 1;

import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BENCHES } from '../../bench/benches.ts';
import { PROJECT_ROOT } from '../../browser/project-root.ts';

const scratch = mkdtempSync(join(tmpdir(), 'readback-tools-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const { scripts, version } = JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as {
  readonly scripts: Readonly<Record<string, string>>;
  readonly version: string;
};

/** What a script runs after its build. */
const programOf = (name: string): string => scripts[name]?.split(' && ').at(-1) ?? '';

/** Runs a line of the shell; a pipe fails where any part of it does. */
function shell(line: string): Promise<{ code: number | null; out: string; complaint: string }> {
  const child = spawn('bash', ['-c', `set -o pipefail; ${line}`], {
    cwd: PROJECT_ROOT,
    env: { ...process.env, DATA_DIR: scratch },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [out, complaint] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text) => {
    out += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text) => {
    complaint += text;
  });
  return new Promise((resolve) => child.once('close', (code) => resolve({ code, out, complaint })));
}

const TOOLS = [
  'demo',
  'visit',
  'parse',
  'hear',
  'phrases',
  'record',
  'diagnose',
  'diagnose:quality',
  'chart',
  'bench',
  'start',
  'verify',
  'backup',
  'restore',
];

describe.each(TOOLS)('the tool %s', (name) => {
  it('prints its help, the version, and one sentence for what it does not know', async () => {
    const [help, versioned, unknown] = await Promise.all(
      ['--help', '--version', '--loud'].map((option) => shell(`${programOf(name)} ${option}`)),
    );
    expect(help).toMatchObject({ code: 0, complaint: '' });
    expect(help?.out).toMatch(new RegExp(`^${name}: .+\\.\n\nUsage: npm run -s ${name}\\b`));
    for (const part of ['\nOptions:\n', '  --help ', '\nExamples:\n', '\nExits 0']) expect(help?.out).toContain(part);
    expect(Math.max(...(help?.out ?? '').split('\n').map((line) => line.length))).toBeLessThanOrEqual(128);
    expect(versioned).toEqual({ code: 0, out: `${version}\n`, complaint: '' });
    expect(unknown).toMatchObject({ code: 2, out: '' });
    expect(unknown?.complaint).toMatch(new RegExp(`^[^\n]*--loud[^\n]*: see "npm run -s ${name} -- --help"\\.\n$`));
  });
});

describe('a tool whose reader has gone', () => {
  it.each([
    ['phrases', '', 1],
    ['phrases', '--as jsgf', 1],
    ['record', 'fixtures/visits/library/events.jsonl', 2],
    ['record', '--json fixtures/visits/library/events.jsonl', 1],
    ['diagnose', '--list', 1],
    ['chart', '', 1],
    ['diagnose:quality', '--only matched --cases 2 --designs 1', 1],
  ])('ends quietly: %s %s', async (name, options, lines) => {
    const { code, out, complaint } = await shell(`${programOf(name)} ${options} | head -${lines}`);
    expect({ code, complaint }).toEqual({ code: 0, complaint: '' });
    expect(out.split('\n')).toHaveLength(lines + 1);
  });

  it('ends quietly while it still waits for lines', async () => {
    const lines = Array.from({ length: 200 }, () => 'what next').join('\n');
    const { code, out, complaint } = await shell(`${programOf('parse')} <<< '${lines}' | head -1`);
    expect({ code, complaint }).toEqual({ code: 0, complaint: '' });
    expect(JSON.parse(out)).toMatchObject({ command: 'what-next' });
  });

  it('ends its server in good order: the demo', async () => {
    const { code, out, complaint } = await shell(`${programOf('demo')} --json | head -3`);
    expect({ code, complaint }).toEqual({ code: 0, complaint: '' });
    expect(out.split('\n')).toHaveLength(4);
    const record = join(scratch, 'demo', 'readback.sqlite');
    expect(existsSync(record)).toBe(true);
    // A server that closed its record takes its write-ahead log away; one that was killed or runs on leaves it.
    await expect.poll(() => existsSync(`${record}-wal`), { timeout: 20_000 }).toBe(false);
  });
});

describe('the bench tool', () => {
  it('lists every bench of its folder', () => {
    const files = readdirSync(join(PROJECT_ROOT, 'test/bench')).filter((file) => file.endsWith('.bench.ts'));
    expect(Object.keys(BENCHES)).toEqual(files.map((file) => file.replace('.bench.ts', '')).sort());
  });

  it.each([
    ['', 'No bench is named'],
    ['lunch', 'The bench "lunch" is not one of'],
    ['language loud=1', 'The bench language has no option "loud"'],
  ])('says in one sentence what is wrong: %s', async (words, sentence) => {
    const { code, complaint } = await shell(`${programOf('bench')} ${words}`);
    expect(code).toBe(2);
    expect(complaint).toContain(sentence);
    expect(complaint.trim().split('\n')).toHaveLength(1);
  });

  it.each([
    ['nowhere.json', 'file-missing', 'nowhere.json cannot be read'],
    ['README.md', 'profile-broken', 'README.md is no unit profile'],
  ])('is named by diagnose in a line of its protocol too: %s', async (file, code, sentence) => {
    const { out, complaint, ...ended } = await shell(`${programOf('diagnose')} --unit ${file}`);
    expect(ended.code).toBe(2);
    expect(JSON.parse(out)).toEqual({ error: { code, message: expect.stringContaining(sentence) } });
    expect(complaint.trim().split('\n')).toHaveLength(1);
  });
});

describe('a file that a tool cannot use', () => {
  it.each([
    ['visit', '--unit nowhere.json', 'nowhere.json cannot be read'],
    ['hear', '--grammar nowhere.jsgf some.wav', 'nowhere.jsgf cannot be read'],
  ])('is named in one sentence: %s %s', async (name, options, sentence) => {
    const { code, out, complaint } = await shell(`${programOf(name)} ${options}`);
    expect([code, out]).toEqual([2, '']);
    expect(complaint).toContain(sentence);
    expect(complaint.trim().split('\n')).toHaveLength(1);
  });
});

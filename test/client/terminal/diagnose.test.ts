import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildRoom } from '../../server/built-server.ts';

const scratch = mkdtempSync(join(tmpdir(), 'readback-diagnose-'));
let tool: string;
beforeAll(() => {
  tool = buildRoom('client/terminal', 'diagnose.js');
}, 240_000);
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** Runs the tool on a profile of that text. */
async function withProfile(text: string): Promise<{ code: number | null; out: string }> {
  const file = join(scratch, 'unit.json');
  writeFileSync(file, text);
  const child = spawn(process.execPath, [tool, '--unit', file], { stdio: ['ignore', 'pipe', 'ignore'] });
  let out = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  return new Promise((resolve) => child.once('close', (code) => resolve({ code, out })));
}

describe('a profile that is none', () => {
  it.each([
    ['a list', '[]', 'profile-broken'],
    ['null', 'null', 'profile-broken'],
    ['no JSON', 'bakery', 'profile-broken'],
    ['nothing', '', 'profile-broken'],
    ['nothing in it', '{}', 'bad-profile'],
    ['a misspelt field', '{"id":"x","contactorPole":2}', 'bad-profile'],
    ['a fluid without data', '{"id":"x","refrigerant":"R-11"}', 'unknown-refrigerant'],
  ])('%s is refused in a line of its own, with code and sentence', async (_what, text, refusal) => {
    const { code, out } = await withProfile(text);
    expect(code).toBe(2);
    const lines = out.trim().split('\n');
    expect(lines).toHaveLength(1);
    expect(JSON.parse(lines[0]!)).toEqual({ error: { code: refusal, message: expect.stringMatching(/\w.*\.$/) } });
  });
});

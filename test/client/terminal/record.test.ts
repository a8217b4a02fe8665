import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { LIBRARY_VISIT, TypedVisit } from '../visit/typed-visit.ts';

const RECORD = fileURLToPath(new URL('../../../.build/client/terminal/record.js', import.meta.url));

/** Runs the built command as its user does. */
function record(...args: readonly string[]): Promise<{ code: number; out: string; complaint: string }> {
  return new Promise((resolve) => {
    execFile(process.execPath, [RECORD, ...args], { maxBuffer: 1e8 }, (error, out, complaint) => {
      resolve({ code: error === null ? 0 : Number(error.code), out, complaint });
    });
  });
}

describe('the record on the terminal', () => {
  let folder = '';
  let visit: TypedVisit;
  let file = '';
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'readback-record-'));
    visit = await TypedVisit.open();
    await visit.type(...LIBRARY_VISIT, 'recommend a new filter', 'finish the visit');
    file = join(folder, 'visit.jsonl');
    writeFileSync(file, `${visit.bodies.join('\n')}\n`);
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('prints as text what the visit came to', async () => {
    const { code, out } = await record(file);
    expect(code).toBe(0);
    for (const part of [
      'reading room',
      'Capacitor fan section weak',
      'Recommended\n',
      'a new filter',
      'Proofs that power was off',
      'live source',
    ])
      expect(out).toContain(part);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(160);
  });

  it('prints as one document what the fold gives, valid by the schema that it prints', async () => {
    const [{ out }, printed] = await Promise.all([record('--json', file), record('--schema')]);
    const document = JSON.parse(out);
    expect(document).toEqual(JSON.parse(JSON.stringify(toVisitRecord(visit.events()))));
    expect(new Ajv2020({ strict: true }).compile(JSON.parse(printed.out))(document)).toBe(true);
  });

  it.each([
    ['a file that is not there', ['nowhere.jsonl'], 'cannot be read'],
    ['no file', [], 'No record is named'],
  ])('says in one sentence what to do about %s', async (_what, args, words) => {
    const { code, complaint } = await record(...args);
    expect(code).toBe(2);
    expect(complaint).toContain(words);
    expect(complaint.trim().split('\n')).toHaveLength(1);
  });

  it('refuses a file that is no record', async () => {
    const other = join(folder, 'other.jsonl');
    writeFileSync(other, '{"hello": 1}\n');
    const { code, complaint } = await record(other);
    expect(code).toBe(2);
    expect(complaint).toContain('No record of a visit');
  });
});

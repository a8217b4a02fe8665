import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openFileLog } from '../../../client/record/node/file-log.ts';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { startLocalServer } from '../../../client/record/node/local-server.ts';
import { sha256 } from '../../../client/record/node/sha256.ts';
import { Outbox } from '../../../client/record/outbox.ts';
import { readingsCsv } from '../../../grammar/export/readings-csv.ts';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { chainBodies, emptyHead } from '../../../grammar/visit/envelope.ts';
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

  /** A device's record file of these bodies, chained as the grammar's published vectors are. */
  async function recordFile(name: string, visitId: string, bodies: readonly string[], device = 'phone') {
    const stream = { company: 'local', visit: visitId, device, epoch: 1 };
    const entries = await chainBodies(await emptyHead(stream, sha256), bodies, sha256);
    const path = join(folder, name);
    const lines = [
      { kind: 'stream', version: 1, stream },
      { kind: 'batch', entries },
    ];
    writeFileSync(path, lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
    return { path, head: entries.at(-1) };
  }
  const remarkOf = (text: string) =>
    JSON.stringify({
      type: 'remark.made',
      time: { at: '2026-06-15T14:00:30.000Z', mono: 30_000 },
      author: 'sam hill',
      text,
    });

  it('prints all but an entry that is no JSON, and one of a kind unknown, and names both where they stand', async () => {
    const later = JSON.stringify({ type: 'gauge.calibrated', time: { at: '2026-06-15T14:00:00.000Z', mono: 0 } });
    const logged = visit.bodies.findIndex((body) => body.includes('"reading.logged"'));
    const bodies = visit.bodies.with(logged, '{"type":"reading.lo').toSpliced(logged + 1, 0, later);
    const { path } = await recordFile('torn.jsonl', 'test-visit', bodies);
    const [printed, json] = await Promise.all([record(path), record('--json', path)]);
    expect([printed.code, json.code]).toEqual([0, 0]);
    const out = printed.out.replaceAll(/\s+/g, ' ');
    expect(out).toContain('Capacitor fan section weak');
    expect(out).toContain(`entry ${logged + 1} cannot be read`);
    expect(out).toContain(`entry ${logged + 2} is of a kind that this version does not know, “gauge calibrated”`);
    expect(out).toContain('2 of them could not be read and are left out here');
    const document = JSON.parse(json.out);
    expect(document.notRead).toMatchObject([
      { entry: logged + 1, why: 'unreadable' },
      { entry: logged + 2, why: 'unknown kind', type: 'gauge.calibrated' },
    ]);
    // RFC 4180: each line as many cells as the head.
    const csv = readingsCsv(document).split('\r\n');
    const cells = csv.filter((line) => line.includes('unknown kind: gauge.calibrated'));
    expect(cells).toHaveLength(1);
    expect(cells[0]?.split(',')).toHaveLength(csv[0]?.split(',').length ?? 0);
  });

  it('takes its first time from the first entry that can be read', async () => {
    const { path } = await recordFile('no-opening.jsonl', 'test-visit', visit.bodies.with(0, '{').with(1, '{'));
    const { code, out } = await record(path);
    expect(code).toBe(0);
    expect(out).not.toContain('1970');
    expect(out).toContain('entry 1 cannot be read');
  });

  it('refuses a stream that opens no visit, and says of a file of another visit that it was left out', async () => {
    const remarks = await recordFile('remarks.jsonl', 'test-visit', [remarkOf('mind the dog')], 'desk');
    const refused = await record(remarks.path);
    expect(refused.code).toBe(2);
    expect(refused.complaint).toContain('opens no visit');
    expect(refused.out).toBe('');
    const foreign = await recordFile('foreign.jsonl', 'other-visit', [remarkOf('not for here')], 'desk');
    const joined = await record(file, remarks.path, foreign.path);
    expect(joined.code).toBe(0);
    expect(joined.out).toContain('mind the dog');
    expect(joined.out).not.toContain('not for here');
    for (const told of [joined.out, joined.complaint]) {
      expect(told).toContain('foreign.jsonl is of another visit, other-visit');
      expect(told).toContain('Of remarks.jsonl 1 remark was taken in');
    }
  });

  it('counts entries as the device does, whatever remarks came from others', async () => {
    const torn = visit.bodies.findLastIndex((body) => body.includes('"reading.logged"'));
    const { path } = await recordFile('torn-late.jsonl', 'test-visit', visit.bodies.with(torn, 'gone'));
    const remarks = await recordFile('desk.jsonl', 'test-visit', [remarkOf('mind the dog')], 'desk');
    const [alone, joined] = await Promise.all([record('--json', path), record('--json', path, remarks.path)]);
    const entries = (out: string) => JSON.parse(out).notRead.map(({ entry }: { entry: number }) => entry);
    expect(entries(alone.out)).toEqual([torn + 1]);
    expect(entries(joined.out)).toEqual([torn + 1]);
  });

  it('prints what a server that ran signed and receipted, and says where none is at hand', async () => {
    const dataDir = join(folder, 'data');
    mkdirSync(dataDir);
    const program = fileURLToPath(new URL('../../../.build/server/main.js', import.meta.url));
    const stream = { company: 'local', visit: 'test-visit', device: 'phone', epoch: 1 };
    const path = join(dataDir, 'test-visit.jsonl');
    let server = await startLocalServer({ program, dataDir });
    try {
      const { log } = await openFileLog(path, stream);
      const outbox = new Outbox({ log, clock: Date.now, ...nodeLink(server.url) }).start();
      await outbox.append(visit.bodies);
      await outbox.settled();
      outbox.stop();
      await log.close();
      await server.stop();
      // What the server wrote, read by nothing of ours.
      const kept = readFileSync(join(dataDir, 'heads.jsonl'), 'utf8').trim().split('\n');
      const signed = JSON.parse(kept.at(-1) ?? '');
      const { receipt } = JSON.parse(readFileSync(path, 'utf8').trim().split('\n').at(-1) ?? '');
      const beside = (await record(path)).out.replaceAll(/\s+/g, ' ');
      expect(beside).toContain(`The server's head ${signed.number}, signed`);
      expect(beside).toContain(signed.signature);
      expect(beside).toContain(`up to entry ${visit.bodies.length}, and so it stands here`);
      expect(beside).toContain(receipt.signature);
      server = await startLocalServer({ program, dataDir });
      expect((await record('--server', server.url, path)).out.replaceAll(/\s+/g, ' ')).toContain(signed.signature);
      const { path: alone } = await recordFile('alone.jsonl', 'test-visit', visit.bodies);
      const without = (await record(alone)).out;
      expect(without).toContain('No head that a server signed is at hand.');
      expect(without).toContain('No receipt of a server is at hand.');
      const { path: other } = await recordFile('other-last.jsonl', 'test-visit', visit.bodies.with(-1, '{}'));
      expect((await record('--server', dataDir, other)).out).toContain('one of the two was changed');
      const { path: cut } = await recordFile('cut.jsonl', 'test-visit', visit.bodies.slice(0, -3));
      expect((await record('--server', dataDir, cut)).out).toContain('3 entries are not here');
      const nowhere = await record('--server', join(folder, 'nowhere'), path);
      expect([nowhere.code, nowhere.complaint]).toEqual([2, expect.stringContaining('No signed heads')]);
    } finally {
      await server.stop();
    }
  }, 60_000);

  it('refuses a file that is no record', async () => {
    const other = join(folder, 'other.jsonl');
    writeFileSync(other, '{"hello": 1}\n');
    const { code, complaint } = await record(other);
    expect(code).toBe(2);
    expect(complaint).toContain('No record of a visit');
  });
});

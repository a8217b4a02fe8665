import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { VisitRecordSchema } from '../../../grammar/export/visit-record-schema.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';

const DEMO = fileURLToPath(new URL('../../../.build/client/terminal/demo.js', import.meta.url));

interface Run {
  readonly code: number | null;
  readonly lines: readonly Record<string, unknown>[];
  readonly complaint: string;
}

/** Runs the built demo as its user does, with its JSON lines. */
function demo(dataDir: string, ...args: readonly string[]): Promise<Run> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [DEMO, '--json', ...args], { env: { ...process.env, DATA_DIR: dataDir } });
    let out = '';
    let complaint = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      complaint += text;
    });
    child.once('close', (code) => {
      const lines = out.split('\n').filter((line) => line.startsWith('{'));
      resolve({ code, complaint, lines: lines.map((line) => JSON.parse(line) as Record<string, unknown>) });
    });
  });
}

const summaryOf = ({ lines }: Run) => lines.find((line) => 'summary' in line)?.['summary'] as Record<string, unknown>;

function foldOf({ lines }: Run) {
  const events = lines.flatMap((line) => (line['type'] === 'events' ? (line['events'] as VisitEvent[]) : []));
  return { events, view: foldVisit(events) };
}

describe('the demo, from sound to record', () => {
  let folder = '';
  let run: Run;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'readback-demo-'));
    run = await demo(folder, '--kill-server-at', '20');
  }, 300_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('reaches its close with the server killed in mid-visit, and the server then holds the same chain', () => {
    expect(run.complaint).toBe('');
    expect(run.code).toBe(0);
    expect(summaryOf(run)).toMatchObject({
      closed: true,
      serverHoldsSameChain: true,
      finding: 'capacitor fan section weak',
    });
    const notices = run.lines.flatMap((line) => ('notice' in line ? [line['notice']] : []));
    expect(notices).toEqual([expect.stringContaining('killed'), expect.stringContaining('back')]);
  });

  it('understands at least 44 of its 46 utterances by decoding them', () => {
    const { understoodRight, utterances } = summaryOf(run) as { understoodRight: number; utterances: number };
    expect(utterances).toBe(46);
    expect(understoodRight).toBeGreaterThanOrEqual(44);
  });

  it('holds a correction, a reading out of order, a bare value, a teen/ty question, a proof in one breath and a refusal', () => {
    const { events, view } = foldOf(run);
    expect(view.readings.some((line) => line.corrected.length > 0)).toBe(true);
    expect(view.asked.some((line) => line.twin !== undefined)).toBe(true);
    expect(view.proofs).toMatchObject([{ before: 240, values: [0, 0, 0, 0, 0, 0], after: 240, result: 'reads dead' }]);
    expect(view.refused).toMatchObject([{ reason: 'not-proven-dead', reading: { unit: 'Ohm' } }]);
    const bare = view.heard.find((line) => line.text.startsWith('one point one'));
    expect(bare?.understanding.meaning).toMatchObject({ kind: 'reading', reading: { at: ['cap-C', 'cap-FAN'] } });
    const outOfOrder = events.filter((event) => event.type === 'reading.logged' && event.test === undefined);
    expect(outOfOrder.length).toBeGreaterThan(0);
  });

  it('leaves a record that prints as one document, valid by its JSON Schema', async () => {
    const { readEvents } = await import('../../../client/terminal/read-events.ts');
    const document = toVisitRecord(await readEvents(String(summaryOf(run)['record'])));
    const valid = new Ajv2020({ strict: true }).compile(JSON.parse(JSON.stringify(VisitRecordSchema)));
    expect(valid(JSON.parse(JSON.stringify(document))), JSON.stringify(valid.errors)).toBe(true);
    expect(document).toMatchObject({ phase: 'closed', finding: { fault: 'fan-capacitor-weak' } });
    expect(document.parts).toHaveLength(1);
  });

  it('leaves a record whose lines are the events told, and keeps it after a torn end', async () => {
    const record = String(summaryOf(run)['record']);
    const text = readFileSync(record, 'utf8');
    const torn = join(folder, 'torn.jsonl');
    writeFileSync(torn, text.slice(0, Math.floor(text.length * 0.6)));
    const { openFileLog } = await import('../../../client/record/node/file-log.ts');
    const stream = { company: 'local', visit: record.replace(/^.*\/|\.jsonl$/g, ''), device: 'terminal', epoch: 1 };
    const { log, notice } = await openFileLog(torn, stream);
    expect(notice).toMatch(/\.$/);
    const kept = (await log.read(1)).map((entry) => entry.body);
    const told = foldOf(run).events.map((event) => JSON.stringify(event));
    expect(kept.length).toBeGreaterThan(100);
    expect(kept.length).toBeLessThan(told.length);
    expect(kept).toEqual(told.slice(0, kept.length));
    await log.close();
  });
});

describe('the demo, given what it cannot use', () => {
  it.each([
    [['--visit', 'nowhere'], /no recorded visit called nowhere/],
    [['--kill-server-at', 'noon'], /^"noon" is no number of a line/],
  ])('says so in one sentence: %s', async (args, sentence) => {
    const { code, complaint } = await demo(tmpdir(), ...args);
    expect(code).toBe(2);
    expect(complaint.trim().split('\n')).toHaveLength(1);
    expect(complaint).toMatch(sentence);
  });

  it('says which folder cannot be written', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'readback-demo-')), 'a-file');
    writeFileSync(file, '');
    const { code, complaint } = await demo(file);
    expect(code).toBe(2);
    expect(complaint).toMatch(/cannot be written: permit writing there, or set DATA_DIR/);
  });
});

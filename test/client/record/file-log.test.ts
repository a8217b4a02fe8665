import { execFileSync } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { openFileLog } from '../../../client/record/node/file-log.ts';
import { buildRoom, scratchFolder } from '../../server/built-server.ts';

const scratch = scratchFolder();
afterAll(() => scratch.remove());
const stream = { company: 'local', visit: 'v-file', device: 'terminal', epoch: 1 };

/** A record of three batches (1, 2 and 3 events) with one acknowledgement, as bytes. */
async function recordBytes(name: string): Promise<Buffer> {
  const path = join(scratch.path, name);
  const { log } = await openFileLog(path, stream);
  await log.append(['{"n":1}']);
  const [, third] = await log.append(['{"n":2}', '{"n":"½"}']);
  await log.acknowledge({ seq: 3, hash: third?.hash ?? '' });
  await log.append(['{"n":4}', '{"n":5}', '{"n":6}']);
  await log.close();
  return readFileSync(path);
}

describe('a record file that was cut short', () => {
  test('at any byte at all: whole batches are kept, the torn end is dropped and told, and the record goes on', async () => {
    const bytes = await recordBytes('whole.jsonl');
    const path = join(scratch.path, 'cut.jsonl');
    for (let cut = 0; cut <= bytes.length; cut += 1) {
      writeFileSync(path, bytes.subarray(0, cut));
      const { log, notice } = await openFileLog(path, stream);
      const whole = bytes.subarray(0, cut).lastIndexOf(0x0a) + 1;
      const lines = bytes.subarray(0, whole).toString().split('\n').length - 1;
      const expected = [0, 0, 1, 3, 3, 6][lines];
      expect((await log.read(1)).length).toBe(expected);
      expect(notice === undefined).toBe(whole === cut);
      if (notice !== undefined) {
        expect(notice).toMatch(
          /was cut short: its last \d+ bytes were dropped, and the \d+ events? before them kept\.$/,
        );
      }
      if (cut % 7 === 0) {
        await log.append(['{"after":"the cut"}']);
        await log.close();
        const again = await openFileLog(path, stream);
        expect(again.notice).toBeUndefined();
        expect((await again.log.read(1)).length).toBe((expected ?? 0) + 1);
        await again.log.close();
      } else {
        await log.close();
      }
    }
  });

  test('an end of zero bytes, as a power cut leaves it, is dropped too', async () => {
    const bytes = await recordBytes('zeros-whole.jsonl');
    const path = join(scratch.path, 'zeros.jsonl');
    writeFileSync(path, Buffer.concat([bytes, Buffer.alloc(4096)]));
    const { log, notice } = await openFileLog(path, stream);
    expect(notice).toContain('its last 4096 bytes were dropped');
    expect(log.head().seq).toBe(6);
    await log.close();
    expect(statSync(path).size).toBe(bytes.length);
  });
});

describe('a record file that was damaged elsewhere', () => {
  test('any one byte changed before the end is found, and the file is left as it is', async () => {
    const bytes = await recordBytes('flip-whole.jsonl');
    const path = join(scratch.path, 'flip.jsonl');
    const batches = bytes.indexOf(0x0a) + 1;
    const lastLine = bytes.subarray(0, -1).lastIndexOf(0x0a);
    for (let at = batches; at < lastLine; at += 3) {
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] as number) ^ 1;
      writeFileSync(path, flipped);
      await expect(openFileLog(path, stream), `byte ${at}`).rejects.toMatchObject({ code: 'log-damaged' });
      expect(readFileSync(path)).toEqual(flipped);
    }
  });

  test('a line taken out of the middle is found', async () => {
    const lines = (await recordBytes('line-whole.jsonl')).toString().split('\n');
    const path = join(scratch.path, 'line.jsonl');
    writeFileSync(path, lines.toSpliced(1, 1).join('\n'));
    await expect(openFileLog(path, stream)).rejects.toMatchObject({ code: 'log-damaged' });
  });

  test('another visit, a newer form and a folder in the way each have their own sentence', async () => {
    const path = join(scratch.path, 'other.jsonl');
    writeFileSync(path, await recordBytes('other-whole.jsonl'));
    await expect(openFileLog(path, { ...stream, visit: 'v-2' })).rejects.toMatchObject({ code: 'log-other-visit' });
    writeFileSync(path, '{"kind":"stream","version":2,"stream":{"id":1}}\n');
    await expect(openFileLog(path, stream)).rejects.toMatchObject({ code: 'log-newer' });
    await expect(openFileLog(scratch.path, stream)).rejects.toMatchObject({ code: 'log-unwritable' });
    await expect(openFileLog(join(path, 'below-a-file'), stream)).rejects.toThrow(/cannot be written/);
  });
});

describe('a record file on a disk that takes no more', () => {
  test('refuses the event in one sentence, keeps all before it, and goes on once there is room', async () => {
    const program = buildRoom('client/record/node', 'file-log.js');
    const path = join(scratch.path, 'full.jsonl');
    const script = `
      const { log } = await (await import(${JSON.stringify(program)})).openFileLog(${JSON.stringify(path)}, ${JSON.stringify(stream)});
      try { for (;;) await log.append(['x'.repeat(3000)]); }
      catch ({ code, message }) { console.log(JSON.stringify({ code, message, kept: log.head().seq })); }`;
    // No file of this process may grow beyond 40 KiB (setrlimit): the last line does not fit whole.
    const out = execFileSync('bash', [
      '-c',
      'ulimit -f 40; exec "$0" --input-type=module -e "$1"',
      process.execPath,
      script,
    ]);
    const told = JSON.parse(out.toString());
    expect(told).toMatchObject({ code: 'log-unwritable', message: expect.stringContaining('free space') });
    expect(told.kept).toBeGreaterThan(8);
    const { log } = await openFileLog(path, stream);
    expect(log.head().seq).toBe(told.kept);
    await log.append(['there is room again']);
    await log.close();
  });
});

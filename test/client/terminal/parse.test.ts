import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildRoom } from '../../server/built-server.ts';

let parse: string;
let phrases: string;
beforeAll(() => {
  parse = buildRoom('client/terminal', 'parse.js');
  phrases = parse.replace('parse.js', 'phrases.js');
}, 240_000);

interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly complaint: string;
}

/** Runs a built tool with text on stdin. */
async function run(tool: string, input: string | Buffer, ...args: readonly string[]): Promise<Run> {
  const child = spawn(process.execPath, [tool, ...args]);
  let [out, complaint] = ['', ''];
  child.stdout.on('data', (text) => {
    out += text;
  });
  child.stderr.on('data', (text) => {
    complaint += text;
  });
  child.stdin.end(input);
  const [code] = (await once(child, 'close')) as [number | null];
  return { code, out, complaint };
}

const objects = (out: string): Record<string, unknown>[] =>
  out
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>);

describe('the parse tool', () => {
  it('writes one flat JSON object for each line, of every kind', async () => {
    const lines = [
      'leg one to ground one eighteen',
      'leg one one eighteen leg two one nineteen',
      'what next',
      'outdoor disconnect is pulled',
      'nameplate RLA sixteen point four',
      'fitted a forty five over five capacitor',
      'lifted the red wire from L1',
      'note dog in the yard',
      'hello how are you',
      '118',
    ];
    const { code, out } = await run(parse, `${lines.join('\n')}\n`);
    const parsed = objects(out);
    expect(code).toBe(0);
    expect(parsed.map((one) => one['heard'])).toEqual(lines);
    expect(parsed.map((one) => one['kind'])).toEqual([
      'reading',
      'several',
      'command',
      'report',
      'nameplate',
      'part',
      'wire',
      'note',
      'unclear',
      'unclear',
    ]);
    expect(parsed[0]).toMatchObject({
      heard: 'leg one to ground one eighteen',
      kind: 'reading',
      verdict: 'logged',
      reading: { quantity: 'voltage', at: ['L1', 'ground'], value: 118, unit: 'V' },
    });
    expect(parsed[1]?.['parts']).toHaveLength(2);
    expect(parsed[8]).toMatchObject({
      verdict: 'rejected',
      reason: 'outside-grammar',
      alternatives: expect.any(Array),
    });
    expect(parsed[9]).toMatchObject({ verdict: 'rejected', reason: 'no-place' });
  });

  it('gives an open circuit as "open", and asks with the reason and the twin', async () => {
    const { out } = await run(parse, 'common to run open\nsuction pressure one fifteen\n');
    const [open, twin] = objects(out);
    expect(open).toMatchObject({ reading: { value: 'open', unit: 'Ohm' } });
    expect(twin).toMatchObject({ verdict: 'asked', reason: 'teen-or-ty', twin: 150 });
  });

  it('answers each line as it comes', async () => {
    const child = spawn(process.execPath, [parse]);
    const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    for (const text of ['what next', 'one eighteen', 'stop']) {
      child.stdin.write(`${text}\n`);
      const answer = await lines.next();
      expect(JSON.parse(answer.value as string)).toMatchObject({ heard: text });
    }
    child.stdin.end();
    await once(child, 'close');
  });

  it('never stops at a bad line', async () => {
    const noise = Buffer.from([0xff, 0xfe, 0x00, 0x80, 0x0a]);
    const input = Buffer.concat([noise, Buffer.from(`${'x '.repeat(100_000)}\n\n\t\n<b>\n`), Buffer.from('what next')]);
    const { code, out } = await run(parse, input);
    const parsed = objects(out);
    expect(code).toBe(0);
    expect(parsed).toHaveLength(6);
    expect(parsed.at(-1)).toMatchObject({ kind: 'command', command: 'what-next' });
  });

  it('binds a bare value to what --expect names, and says in one sentence when it cannot', async () => {
    const { out } = await run(parse, '118\n', '--expect', 'l1,GROUND');
    expect(objects(out)[0]).toMatchObject({ kind: 'reading', reading: { at: ['L1', 'ground'], value: 118 } });
    for (const args of [['--expect'], ['--expect', 'moon'], ['--expect', 'L1,ground', 'more']]) {
      const { code, complaint, out: none } = await run(parse, '118\n', ...args);
      expect([code, none], args.join(' ')).toEqual([2, '']);
      expect(complaint).toMatch(/^[^\n]+: see "npm run -s parse -- --help"\.\n$/);
    }
  });

  it('writes nothing for nothing', async () => {
    expect(await run(parse, '')).toEqual({ code: 0, out: '', complaint: '' });
  });
});

describe('the phrases tool', () => {
  it('prints the sheet and each grammar', async () => {
    expect((await run(phrases, '')).out).toContain('Readings: place, then value');
    expect((await run(phrases, '', '--as', 'jsgf', '--expect', 'compressor')).out).toMatch(/^#JSGF V1\.0;/);
    expect((await run(phrases, '', '--as', 'srgs')).out).toMatch(/^<\?xml/);
    expect((await run(phrases, '', '--as', 'abnf')).out).toMatch(/^#ABNF 1\.0/);
  });

  it('says in one sentence when it cannot', async () => {
    for (const args of [['--as'], ['--as', 'papyrus'], ['--expect', 'moon'], ['sheet']]) {
      const { code, complaint } = await run(phrases, '', ...args);
      expect(code, args.join(' ')).toBe(2);
      expect(complaint).toMatch(/^[^\n]+: see "npm run -s phrases -- --help"\.\n$/);
    }
  });
});

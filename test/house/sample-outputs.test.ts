import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { PROJECT_ROOT } from '../browser/project-root.ts';
import { SampleRunner } from './run-samples.ts';
import { excerpt, samplesIn, textsWithSamples, withoutChance } from './sample-outputs.ts';

const runner = new SampleRunner();
afterAll(() => runner.stop());

const samples = textsWithSamples().flatMap((file) =>
  samplesIn(readFileSync(join(PROJECT_ROOT, file), 'utf8')).map((sample) => ({ file, ...sample })),
);

describe('what a text shows as output', () => {
  it.concurrent.each(samples)(
    'is what comes of it: $file: $command',
    async (sample) => {
      const now = excerpt(await runner.output(sample.command, sample.to), sample);
      expect(withoutChance(sample.shown)).toBe(withoutChance(now));
      // A whole visit is heard in one of them.
    },
    300_000,
  );

  it('is there for every tool, and for the server', () => {
    const shown = samples.map(({ command }) => command).join('\n');
    for (const name of ['demo', 'parse', 'hear', 'phrases', 'record', 'diagnose', 'chart', 'start', 'bench'])
      expect(shown).toContain(name);
  });
});

describe('a sample', () => {
  const block = (marker: string, shown = 'x\n') => `before\n\n<!-- ${marker} -->\n\`\`\`text\n${shown}\`\`\`\nafter\n`;

  it('is read with the lines it shows', () => {
    expect(samplesIn(block('first 2 lines of: npm run -s phrases -- --as jsgf'))).toMatchObject([
      { command: 'npm run -s phrases -- --as jsgf', from: 1, to: 2, shown: 'x\n' },
    ]);
    expect(samplesIn(block('lines 3 to 5 of: a'))).toMatchObject([{ command: 'a', from: 3, to: 5 }]);
    expect(excerpt('1\n2\n3\n4\n', samplesIn(block('lines 2 to 3 of: a'))[0] as never)).toBe('2\n3\n');
  });

  it('that is announced in another way, or has no block, is named', () => {
    expect(() => samplesIn(block('all of: a'))).toThrow(/1 samples are announced, 0/);
    expect(() => samplesIn('<!-- output of: a -->\nno block\n')).toThrow(/output of: a/);
    expect(() => samplesIn(block('output of: a').replace('text', 'json'))).toThrow(/0 have a block/);
  });

  it('differs by anything that is no chance', () => {
    expect(withoutChance('"ms":12,"realTimeFactor":0.4 (100 %, 502 ms)')).toBe(
      withoutChance('"ms":9,"realTimeFactor":1.24 (100 %, 88 ms)'),
    );
    expect(withoutChance('{"value":118}')).not.toBe(withoutChance('{"value":119}'));
    expect(withoutChance('library-mwygfl1l.jsonl')).not.toBe(withoutChance('fuse-mwygfl1l.jsonl'));
  });

  it('whose command fails is no sample', async () => {
    await expect(runner.output('npm run -s parse -- --loud', 1)).rejects.toThrow(/exits 2: There is no option --loud/);
    await expect(runner.output('npm run -s nothing', 1)).rejects.toThrow(/no script nothing/);
  });
});

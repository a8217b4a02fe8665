import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';

const grammar = (rule: string): string => `#JSGF V1.0;\ngrammar test;\npublic <s> = ${rule};\n`;

describe('a recogniser', { timeout: 60_000 }, () => {
  test('names every word that it cannot pronounce instead of crashing', async () => {
    await expect(loadHearing({ grammar: grammar('one | zxqvish | two qwrtyish') })).rejects.toMatchObject({
      fault: 'grammar-unknown-word',
      message: expect.stringMatching(/"zxqvish", "qwrtyish"/),
    });
  });

  test('says what is wrong with a grammar that cannot be read', async () => {
    await expect(loadHearing({ grammar: 'public <s> = one;' })).rejects.toMatchObject({ fault: 'grammar-broken' });
  });

  test('says which files a model lacks', async () => {
    await expect(loadHearing({ model: '/nowhere' })).rejects.toMatchObject({
      fault: 'model-missing',
      message: expect.stringMatching(/\/nowhere has no mdef/),
    });
  });

  test('says so when the files of a model are none', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'readback-no-model-'));
    for (const file of ['mdef', 'means', 'variances', 'sendump', 'transition_matrices', 'noisedict']) {
      writeFileSync(join(folder, file), 'no such thing');
    }
    await expect(loadHearing({ model: folder })).rejects.toMatchObject({
      fault: 'model-missing',
      message: expect.stringMatching(/mdef.*check the folder of the model/s),
    });
  });

  test('can pronounce every word of the visit', async () => {
    // A word without a pronunciation would be refused here.
    const hearing = await loadHearing();
    expect(hearing.speaking).toBe(false);
    hearing.close();
  });
});

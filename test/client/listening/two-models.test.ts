import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import createSpeechModule from 'soundswallower';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import type { Pronunciations } from '../../../client/listening/recogniser/grammar-decoder.ts';
import { Recogniser } from '../../../client/listening/recogniser/recogniser.ts';
import type { SpeechModule } from '../../../client/listening/recogniser/speech-module.ts';
import { TwoModels } from '../../../client/listening/recogniser/two-models.ts';
import { makeDither } from '../../../client/listening/sound/dither.ts';
import { readWav } from '../../../client/listening/wav.ts';

const FOLDER = join(dirname(createRequire(import.meta.url).resolve('soundswallower')), 'model', 'en-us');
const grammar = (sentences: string): string => `#JSGF V1.0;\ngrammar test;\npublic <s> = ${sentences};\n`;

function speech(id: string): Float32Array {
  const url = new URL(`../../../fixtures/audio/library/${id}.wav`, import.meta.url);
  const samples = readWav(readFileSync(url), id);
  makeDither()(samples);
  return samples;
}

describe('two models that hear the same sound', { timeout: 120_000 }, () => {
  let module: SpeechModule;
  const opened: TwoModels[] = [];
  beforeAll(async () => {
    module = (await createSpeechModule()) as unknown as SpeechModule;
  }, 120_000);
  afterAll(() => {
    for (const one of opened) one.close();
  });

  const name = (value: string) => ({ kind: 'name', value }) as const;

  /** The first and the second model with words of their own; any word may be taken for any other. */
  async function open(first: Pronunciations, second: Pronunciations): Promise<TwoModels> {
    const model = { id: 'bundled', folder: FOLDER } as const;
    const one = await Recogniser.open(module, model, first, GATES.bundled, name);
    const both = new TwoModels(one, await Recogniser.open(module, model, second, GATES.bundled, name));
    opened.push(both);
    return both;
  }

  function hear(both: TwoModels, id: string) {
    both.begin();
    both.feed(speech(id));
    return both.end(120);
  }

  test('are sure of what nothing comes near to, and take no other talk', async () => {
    const both = await open({}, {});
    both.setEverything(grammar('compressor is fourteen | compressor is forty'));
    expect(hear(both, '25-why').accepted).toBe(false);
    both.setEverything(grammar('leg one to ground (one eighteen | one eighty)'));
    const heard = hear(both, '09-leg-one');
    expect(heard).toMatchObject({
      text: 'leg one to ground one eighteen',
      accepted: true,
      alternatives: [],
      rivals: [{ text: 'leg one to ground one eighty' }],
    });
    expect(heard.rivals[0]?.behind).toBeGreaterThan(300);
  });

  test('doubt what neither can tell from its rival, and name that', async () => {
    const alike = { wun: ['W AH N'] };
    const both = await open(alike, alike);
    both.setEverything(grammar('leg one to ground (one eighteen | wun eighteen)'));
    const { text, alternatives } = hear(both, '09-leg-one');
    expect([text, ...alternatives].sort()).toEqual([
      'leg one to ground one eighteen',
      'leg one to ground wun eighteen',
    ]);
  });

  test('set an order right that the first cannot hear, and doubt it', async () => {
    const both = await open({ atein: ['S IH K'] }, { atein: ['EY T IY N'] });
    both.setEverything(grammar('leg one to ground one (fifty | atein)'));
    const heard = hear(both, '09-leg-one');
    expect(heard).toMatchObject({ text: 'leg one to ground one atein', accepted: true, doubtful: true });
    expect(heard.margin).toBeLessThan(6);
  });

  test('are sure where the second can tell what the first cannot', async () => {
    const both = await open({ wun: ['W AH N'] }, { wun: ['S IH K S T IY'] });
    both.setEverything(grammar('leg one to ground (wun eighteen | one eighteen)'));
    const { text, rivals, alternatives, confidence } = hear(both, '09-leg-one');
    expect(rivals[0]?.behind).toBeLessThan(100);
    // The first may have taken either; the second is sure of one of them only.
    expect(alternatives).toEqual(text.endsWith('ground one eighteen') ? [] : ['leg one to ground one eighteen']);
    expect(confidence).toBeGreaterThan(0);
  });
});

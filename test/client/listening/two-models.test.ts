import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import createSpeechModule from 'soundswallower';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
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

describe('two recognisers that hear the same sound', { timeout: 120_000 }, () => {
  let one: Recogniser;
  let other: Recogniser;
  let both: TwoModels;
  beforeAll(async () => {
    const module = (await createSpeechModule()) as unknown as SpeechModule;
    const open = () => Recogniser.open(module, { id: 'bundled', folder: FOLDER }, {}, GATES.bundled);
    one = await open();
    other = await open();
    both = new TwoModels(one, other);
  }, 120_000);
  afterAll(() => both.close());

  function hear(samples: Float32Array) {
    both.begin();
    both.feed(samples);
    return both.end(120);
  }

  test('are sure of what both heard', () => {
    both.setEverything(grammar('compressor is fourteen | compressor is forty'));
    const heard = hear(speech('25-why'));
    expect(heard.accepted).toBe(false);
    both.setEverything(grammar('leg one to ground (one eighteen | one eighty)'));
    expect(hear(speech('09-leg-one'))).toMatchObject({
      text: 'leg one to ground one eighteen',
      accepted: true,
      alternatives: [],
      doubtful: false,
    });
  });

  test('doubt what one heard otherwise, and name it', () => {
    one.setEverything(grammar('leg one to ground one eighteen'));
    other.setEverything(grammar('leg one to ground one eighty'));
    const sure = (() => {
      one.begin();
      one.feed(speech('09-leg-one'));
      return one.end(120).confidence;
    })();
    const heard = hear(speech('09-leg-one'));
    expect(heard.text).toBe('leg one to ground one eighteen');
    expect(heard.alternatives).toEqual(['leg one to ground one eighty']);
    expect(heard.confidence).toBeLessThan(0.6 * sure);
  });
});

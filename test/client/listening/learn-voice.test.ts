import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import createSpeechModule from 'soundswallower';
import { beforeAll, describe, expect, test } from 'vitest';
import { learnVoice, type SaidAloud } from '../../../client/listening/profile/learn-voice.ts';
import { adapted } from '../../../client/listening/profile/voice-profile.ts';
import { sentenceAlone } from '../../../client/listening/recogniser/automaton.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import { GrammarDecoder } from '../../../client/listening/recogniser/grammar-decoder.ts';
import type { SpeechModule } from '../../../client/listening/recogniser/speech-module.ts';
import { makeDither } from '../../../client/listening/sound/dither.ts';
import { speak } from '../../../fixtures/speak.ts';

const FOLDER = join(dirname(createRequire(import.meta.url).resolve('soundswallower')), 'model', 'en-us');
const MODEL = { id: 'bundled', folder: FOLDER } as const;

/** A synthetic voice says one thing where another is written: somebody whose "gauge" sounds as others' "seven". */
function said(words: string, spoken: string, stretch: number): SaidAloud {
  const sound = speak({ name: 'slt', stretch }, spoken);
  const padded = new Float32Array(sound.length + 16_000);
  padded.set(sound, 8_000);
  makeDither()(padded);
  return { words, sound: padded };
}

describe('a voice that says a word otherwise than the dictionary', { timeout: 120_000 }, () => {
  let module: SpeechModule;
  beforeAll(async () => {
    module = (await createSpeechModule()) as unknown as SpeechModule;
  });

  const learn = (sentences: readonly SaidAloud[]) =>
    learnVoice({ speech: module, model: MODEL, pronunciations: {}, gate: GATES.bundled }, sentences);

  test('is learnt from a few tries, and fits another one better', async () => {
    const stretches = [0.85, 0.9, 0.95, 1, 1.1, 1.2];
    const tries = stretches.flatMap((stretch) => [
      said('line gauge', 'line seven', stretch),
      said('line heaven', 'line heaven', stretch),
    ]);
    const profile = await learn(tries);
    expect(Object.keys(profile.pronunciations)).toContain('gauge');
    expect(profile.mean).toHaveLength(GATES.bundled.mean.length);

    const other = said('line gauge', 'line seven', 1.05).sound;
    const { pronunciations, gates } = adapted({ pronunciations: {}, gates: GATES }, profile);
    expect(gates.wideband).toBe(GATES.wideband);
    const scoreBy = async (forms: typeof pronunciations): Promise<number> => {
      const decoder = await GrammarDecoder.open(module, MODEL, forms);
      decoder.setNetwork(sentenceAlone('line gauge'));
      decoder.begin(gates.bundled.mean);
      decoder.feed(other);
      const { score } = decoder.end();
      decoder.close();
      return score;
    };
    expect(await scoreBy(pronunciations)).toBeGreaterThan((await scoreBy({})) + 100);
  });

  test('leaves words alone that are said as they are written, and those said too seldom', async () => {
    const tries = [0.9, 1, 1.1, 1.2].flatMap((stretch) => [
      said('seven', 'seven', stretch),
      said('two', 'two', stretch),
    ]);
    const { pronunciations } = await learn([...tries, said('gauge', 'seven', 1)]);
    expect(pronunciations).toEqual({});
  });

  test('of nothing said nothing is learnt', async () => {
    expect(await learn([])).toEqual({ model: 'bundled', mean: GATES.bundled.mean, pronunciations: {} });
  });
});

test('without a profile an ear is as it was', () => {
  const parts = { pronunciations: { one: ['W AH N'] }, gates: GATES };
  expect(adapted(parts, undefined)).toBe(parts);
});

test('what is learnt stands beside what the program has', () => {
  const parts = { pronunciations: { one: ['W AH N'] }, gates: GATES };
  const profile = { model: 'wideband', mean: [1, 2, 3], pronunciations: { one: ['OW N'], two: ['T UW'] } } as const;
  const { pronunciations, gates } = adapted(parts, profile);
  expect(pronunciations).toEqual({ one: ['W AH N', 'OW N'], two: ['T UW'] });
  expect(gates.wideband).toEqual({ ...GATES.wideband, mean: [1, 2, 3] });
});

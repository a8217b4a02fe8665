import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import createSpeechModule from 'soundswallower';
import { beforeAll, describe, expect, test } from 'vitest';
import type { HeardAloud } from '../../../client/listening/profile/as-heard.ts';
import { sureOf } from '../../../client/listening/profile/learn-sure.ts';
import { learnVoice } from '../../../client/listening/profile/learn-voice.ts';
import { adapted } from '../../../client/listening/profile/voice-profile.ts';
import { sentenceAlone } from '../../../client/listening/recogniser/automaton.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import { GrammarDecoder } from '../../../client/listening/recogniser/grammar-decoder.ts';
import type { SpeechModule } from '../../../client/listening/recogniser/speech-module.ts';
import { makeDither } from '../../../client/listening/sound/dither.ts';
import { speak } from '../../../fixtures/speak.ts';

const FOLDER = join(dirname(createRequire(import.meta.url).resolve('soundswallower')), 'model', 'en-us');
const LINES = '#JSGF V1.0;\ngrammar lines;\npublic <line> = line (gauge | heaven | seven);\n';
const MODEL = { id: 'bundled', folder: FOLDER } as const;

/** A synthetic voice says one thing where another is written: somebody whose "gauge" sounds as others' "seven". */
function said(words: string, spoken: string, stretch: number): HeardAloud {
  const sound = speak({ name: 'slt', stretch }, spoken);
  const padded = new Float32Array(sound.length + 16_000);
  padded.set(sound, 8_000);
  makeDither()(padded);
  return { words, sound: padded, speechFrames: Math.round(sound.length / 160), loudestDb: -20 };
}

describe('a voice that says a word otherwise than the dictionary', { timeout: 480_000 }, () => {
  let module: SpeechModule;
  beforeAll(async () => {
    module = (await createSpeechModule()) as unknown as SpeechModule;
  });

  const learn = (sentences: readonly HeardAloud[]) =>
    learnVoice({ speech: module, model: MODEL, pronunciations: {}, gate: GATES.bundled, expected: LINES }, sentences);

  test('is learnt from a few tries, and fits another one better', async () => {
    const stretches = [0.85, 0.9, 0.95, 1, 1.1, 1.2];
    const tries = stretches.flatMap((stretch) => [
      said('line gauge', 'line seven', stretch),
      said('line heaven', 'line heaven', stretch),
    ]);
    const profile = await learn(tries);
    expect(Object.keys(profile.pronunciations)).toContain('gauge');
    expect(profile.mean).toHaveLength(GATES.bundled.mean.length);
    expect(profile.voiceDb).toBe(-20);
    expect(profile.sure).toBeLessThanOrEqual(GATES.bundled.sure);
    expect(profile.sure).toBeGreaterThanOrEqual(GATES.bundled.doubt);

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

test('loudness and the margin that is sure are taken over where they were learnt', () => {
  const parts = { pronunciations: {}, gates: GATES };
  const profile = { model: 'wideband', mean: [1], pronunciations: {}, sure: -4.2, voiceDb: -31 } as const;
  const known = adapted(parts, profile);
  expect(known.gates.wideband).toEqual({ ...GATES.wideband, mean: [1], sure: -4.2 });
  expect(known).toMatchObject({ voiceDb: -31 });
});

describe('the margin from which a voice is sure', () => {
  const right = (margins: readonly number[]) => margins.map((margin) => ({ margin, right: true }));
  const low = right([-4, -3.5, -3, -2.5, -2, -1.5, -1, 0, 1, 2]);
  test('is as low as nine in ten of its right ones lie', () => {
    expect(sureOf(GATES.bundled, low)).toBe(-3.5);
  });
  test('stays above what was heard wrongly', () => {
    expect(sureOf(GATES.bundled, [...low, { margin: -2.6, right: false }])).toBeCloseTo(-2.1);
  });
  test('is never higher than for others, nor lower than what is doubtful', () => {
    expect(sureOf(GATES.bundled, right(Array.from({ length: 12 }, () => 3)))).toBe(GATES.bundled.sure);
    expect(sureOf(GATES.bundled, right(Array.from({ length: 12 }, () => -9)))).toBe(GATES.bundled.doubt);
  });
  test('is as for anybody where little was read', () => {
    expect(sureOf(GATES.bundled, low.slice(1))).toBe(GATES.bundled.sure);
  });
});

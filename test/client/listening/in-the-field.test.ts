import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Hearing } from '../../../client/listening/hearing.ts';
import type { HeardSpeech } from '../../../client/listening/hearing-parts.ts';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { readWav } from '../../../client/listening/wav.ts';
import { speak } from '../../../fixtures/speak.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { makeWav } from './make-wav.ts';

const AUDIO = new URL('../../../fixtures/audio/library/', import.meta.url);
const soundOf = (id: string): Float32Array => readWav(readFileSync(new URL(`${id}.wav`, AUDIO)), id);
const LEG_ONE = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] } as const;
const SENTENCE = '09-leg-one';
const WORDS = 'leg one to ground one eighteen';

/** What a person may do to a sound, at 16 kHz. Without the real recogniser these would show nothing. */
const silence = (ms: number): Float32Array => new Float32Array(16 * ms);
const joined = (...parts: readonly Float32Array[]): Float32Array =>
  Float32Array.from(parts.flatMap((part) => [...part]));
const scaled = (sound: Float32Array, db: number): Float32Array => sound.map((sample) => sample * 10 ** (db / 20));
/** flite speaks with silence around: without it. */
function said(words: string): Float32Array {
  const sound = speak({ name: 'rms' }, words);
  const isLoud = (sample: number): boolean => Math.abs(sample) > 0.01;
  return sound.slice(sound.findIndex(isLoud), sound.findLastIndex(isLoud));
}
/** A bare hall: echoes of 0.6 s (Sabine's decay by 60 dB), by noise under an exponential, as is common practice. */
function inHall(sound: Float32Array): Float32Array {
  const out = new Float32Array(sound.length + 8_000);
  let seed = 3;
  for (let echo = 0; echo < 200; echo += 1) {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    const at = seed % 8_000;
    const by = (seed % 2 === 0 ? 0.25 : -0.25) * 10 ** ((-60 * at) / 9_600 / 20);
    for (let index = 0; index < sound.length; index += 1) out[index + at]! += by * sound[index]!;
  }
  for (let index = 0; index < sound.length; index += 1) out[index]! += sound[index]!;
  return scaled(out, -6);
}

describe('in the field', { timeout: 300_000 }, () => {
  let hearing: Hearing;
  beforeAll(async () => {
    hearing = await loadHearing();
  }, 300_000);
  afterAll(() => hearing.close());
  beforeEach(() => {
    hearing.heed('everything');
    hearing.expect(LEG_ONE);
  });

  function hear(sound: Float32Array): HeardSpeech[] {
    const heard: HeardSpeech[] = [];
    for (let at = 0; at < sound.length; at += 320) heard.push(...hearing.push(sound.subarray(at, at + 320)));
    return [...heard, ...hearing.flush()];
  }
  /** Values that would be put on record, without a question, at the place that is read. */
  const logged = (heard: readonly HeardSpeech[]): readonly unknown[] =>
    heard
      .filter(({ accepted }) => accepted)
      .map(({ text, alternatives, doubtful }) => understand(text, LEG_ONE, { alternatives, doubtful }))
      .flatMap(({ verdict, meaning }) =>
        verdict === 'logged' && meaning.kind === 'reading' ? [meaning.reading.value] : [],
      );

  test('a number said with a pause of 0.4 s in it comes out in one piece', () => {
    const heard = hear(joined(silence(500), said('one twenty'), silence(400), said('point five'), silence(900)));
    expect(heard).toHaveLength(1);
    expect(logged(heard).every((value) => value === 120.5)).toBe(true);
  });

  test('a digit 18 dB softer than the number before it is not left out of it', () => {
    const soft = scaled(said('three'), -18);
    const heard = hear(joined(silence(500), said('one'), silence(350), soft, silence(1_400)));
    expect(heard).toHaveLength(1);
    // It may be the speaker's or another's: nothing of it is logged without a question.
    expect(heard[0]).toMatchObject({ doubtful: true });
    expect(logged(heard)).toEqual([]);
  });

  test('a number that goes on 0.9 s after its end goes on from its first part', () => {
    const heard = hear(joined(silence(500), said('one twenty'), silence(900), said('point five'), silence(900)));
    expect(heard.map(({ continues }) => continues ?? false)).toEqual([false, true]);
  });

  test('the same at -60 dBFS as it was recorded, in steps of 16 bits', () => {
    const faint = scaled(soundOf(SENTENCE), -45).map((sample) => Math.round(sample * 32_768) / 32_768);
    expect(hear(faint).map(({ text, accepted }) => [text, accepted])).toEqual([[WORDS, true]]);
  });

  test('a sentence before which and behind which others talk, 20 dB down, is heard by itself', () => {
    const sentence = soundOf(SENTENCE);
    const talk = scaled(said('my truck needs new tires before winter'), -20);
    const heard = hear(joined(talk, sentence, talk));
    expect(heard.filter(({ accepted }) => accepted).map(({ text }) => text)).toEqual([WORDS]);
  });

  test('the mouth itself is nobody who is asked to say it again', () => {
    hearing.heed('urgent', 'Hands off meanwhile: it is live.');
    expect(hear(joined(silence(300), said('hands off meanwhile it is live'), silence(600)))).toEqual([]);
  });

  test.each([
    ['in a bare hall', inHall],
    [
      'clipped to a fourth of its height',
      (sound: Float32Array) => sound.map((one) => Math.max(-0.1, Math.min(0.1, one))),
    ],
    [
      'broken off in the middle of the number',
      (sound: Float32Array) => sound.slice(0, Math.round(sound.length * 0.72)),
    ],
    [
      'from two microphones, 12 ms apart',
      (sound: Float32Array) => sound.map((one, at) => (one + (sound[at - 192] ?? 0)) / 2),
    ],
    [
      'at 8 kHz from the middle on, as a headset that takes a call',
      (sound: Float32Array) =>
        joined(
          sound.slice(0, sound.length >> 1),
          sound.slice(sound.length >> 1).map((_, at, half) => half[at - (at % 2)]!),
        ),
    ],
  ])('%s, no other value is taken without a question', (_, change) => {
    const values = logged(hear(change(soundOf(SENTENCE))));
    expect(values.filter((value) => value !== 118)).toEqual([]);
  });

  test.each([
    ['one channel of two dead', 16_000, 2],
    ['a headset of 8 kHz', 8_000, 1],
  ])('%s: as it was said, or asked', (_, rate, channels) => {
    const sound = soundOf(SENTENCE).filter((_one, at) => at % (16_000 / rate) === 0);
    const samples = channels === 1 ? sound : Float32Array.from([...sound].flatMap((sample) => [sample, 0]));
    const values = logged(hear(readWav(makeWav(samples, { rate, channels }), 'a.wav')));
    expect(values.filter((value) => value !== 118)).toEqual([]);
  });
});

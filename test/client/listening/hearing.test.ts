import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Hearing } from '../../../client/listening/hearing.ts';
import type { HeardSpeech } from '../../../client/listening/hearing-parts.ts';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { readWav } from '../../../client/listening/wav.ts';
import { speak } from '../../../fixtures/speak.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { FOREIGN } from '../../bench/hearing/sentences.ts';
import { tries } from '../../how-much.ts';

const AUDIO = new URL('../../../fixtures/audio/library/', import.meta.url);
const SPOKEN = new URL('../../../fixtures/visits/library/spoken.txt', import.meta.url);
/** What each sound of the library visit says: from its script, which the ear never sees. */
const SCRIPT = readFileSync(SPOKEN, 'utf8')
  .split('\n')
  .map((line) => line.split('|').map((part) => part.trim()))
  .filter(([id, , words]) => words !== undefined && !id!.startsWith('#'))
  .map(([id, , words]) => ({ id: id!, words: words! }));

const soundOf = (id: string): Float32Array => readWav(readFileSync(new URL(`${id}.wav`, AUDIO)), id);
const said = (words: string): Float32Array => soundOf(SCRIPT.find((line) => line.words === words)!.id);

let seed = 7;
/** Between -1 and 1, the same every time. */
const random = (): number => {
  seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
  return (2 * seed) / 0x7fffffff - 1;
};
const noise = (seconds: number, level: number): Float32Array =>
  Float32Array.from({ length: 16_000 * seconds }, () => level * random());

/** A condenser by formula: brown noise, hum of the mains and its double, the blades. Seconds of sound at a level. */
function condenser(seconds: number, level: number): Float32Array {
  let brown = 0;
  return Float32Array.from({ length: 16_000 * seconds }, (_, n) => {
    brown = 0.98 * brown + 0.2 * random();
    const turn = (2 * Math.PI * n) / 16_000;
    return level * (brown + 0.3 * Math.sin(60 * turn) + 0.3 * Math.sin(120 * turn) + 0.2 * Math.sin(85 * turn));
  });
}

describe('hearing', { timeout: 120_000 }, () => {
  let hearing: Hearing;
  beforeAll(async () => {
    hearing = await loadHearing();
  }, 120_000);
  afterAll(() => hearing.close());
  beforeEach(() => {
    hearing.expect({ readings: [] });
    hearing.heed('everything');
  });

  function hear(samples: Float32Array, block = 320): HeardSpeech[] {
    const heard: HeardSpeech[] = [];
    for (let at = 0; at < samples.length; at += block) heard.push(...hearing.push(samples.subarray(at, at + block)));
    return [...heard, ...hearing.flush()];
  }

  test('takes most sentences of a visit as they were said, with nothing expected more than anything else', () => {
    // Every eighth or fourth. Three of forty cannot be told without knowing what is expected.
    const lines = SCRIPT.filter((_, index) => index % tries(12, 4) === 0);
    const right = lines.filter(({ id, words }) => {
      const [heard] = hear(soundOf(id));
      return (
        heard?.accepted && JSON.stringify(understand(heard.text).meaning) === JSON.stringify(understand(words).meaning)
      );
    });
    expect(right.length).toBeGreaterThanOrEqual(lines.length - 2);
    expect(readdirSync(AUDIO).length).toBeGreaterThanOrEqual(SCRIPT.length);
  });

  test('hears the same whatever the blocks are', () => {
    const sound = said('leg one to ground one eighteen');
    for (const block of [37, 160, 4_000, sound.length]) {
      expect(hear(sound, block).map(({ text }) => text)).toEqual(['leg one to ground one eighteen']);
    }
  });

  test('takes a bare value where one reading is expected, from the tight grammar', () => {
    hearing.expect({ readings: [{ quantity: 'capacitance', at: ['cap-FAN', 'cap-C'] }] });
    const [heard] = hear(said('one point one microfarads'));
    expect(heard).toMatchObject({ text: 'one point one microfarads', accepted: true, pass: 'expected' });
  });

  test('takes another reading than the expected one by a second look at the kept sound', () => {
    hearing.expect({ readings: [{ quantity: 'capacitance', at: ['cap-FAN', 'cap-C'] }] });
    const [heard] = hear(said('leg one to ground one eighteen'));
    expect(heard).toMatchObject({ text: 'leg one to ground one eighteen', accepted: true, pass: 'everything' });
  });

  test('while the mouth speaks heeds urgent words alone', () => {
    hearing.heed('urgent');
    const [heard] = hear(said('leg one to ground one eighteen'));
    expect(heard?.accepted ?? false).toBe(false);
  });

  test.each([
    ['silence', new Float32Array(16_000 * 4)],
    ['faint noise', noise(4, 0.002)],
    ['loud noise', noise(4, 0.3)],
    ['a condenser', condenser(6, 0.1)],
    ['clicks', Float32Array.from({ length: 64_000 }, (_, n) => (n % 8_000 < 20 ? 0.9 : 0))],
  ])('accepts nothing from %s', (_, sound) => {
    expect(hear(sound).filter(({ accepted }) => accepted)).toEqual([]);
  });

  test('does not take speech that runs backwards for a sentence', () => {
    const backwards = SCRIPT.slice(0, tries(3, 12)).map(({ id }) => soundOf(id).toReversed());
    const taken = backwards.flatMap((sound) => hear(sound)).filter(({ accepted }) => accepted);
    expect(taken.length).toBeLessThanOrEqual(1);
  });

  test('tells the end of speech from the levels, and counts the pause it waited', () => {
    const sound = said('thermostat is calling');
    const from = hearing.audioMs;
    const [heard] = hear(sound);
    const loudest = sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    const lastLoud = sound.findLastIndex((sample) => Math.abs(sample) > loudest / 30) / 16;
    expect(Math.abs(heard!.endedMs - from - lastLoud)).toBeLessThan(60);
    expect(heard!.verdictMs).toBeGreaterThan(200);
  });

  test('closes a monologue instead of waiting for its end', () => {
    const sound = soundOf(SCRIPT[0]!.id);
    const speech = sound.subarray(6_000, sound.length - 6_000);
    const long = new Float32Array(16_000 * 20);
    for (let at = 0; at + speech.length <= long.length; at += speech.length) long.set(speech, at);
    expect(hear(long).length).toBeGreaterThanOrEqual(2);
  });

  test('gives up talk that goes on and on, and hears the sentence behind it', () => {
    const talk = FOREIGN.flatMap((words) => [...speak({ name: 'rms' }, words).subarray(2_000, -4_000)]);
    const words = 'leg one to ground one eighteen';
    const silence = new Array<number>(24_000).fill(0);
    hearing.expect({ readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] });
    const heard = hear(Float32Array.from([...talk, ...silence, ...said(words), ...silence]));
    // Whatever fits badly is looked at twice, but not what was given up.
    expect(heard[0]).toMatchObject({ accepted: false, looks: 1 });
    expect(heard[0]!.endedMs - heard[0]!.startedMs).toBeGreaterThan(8_000);
    const taken = heard.filter(({ accepted }) => accepted).map(({ text }) => text);
    expect(taken).toEqual([words]);
  });
});

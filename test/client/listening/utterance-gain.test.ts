import { expect, test } from 'vitest';
import { levelOf } from '../../../client/listening/sound/level.ts';
import { UtteranceGain } from '../../../client/listening/sound/utterance-gain.ts';

const frame = (db: number): Float32Array => new Float32Array(160).fill(10 ** (db / 20));
const frames = (count: number, db: number): Float32Array[] => Array.from({ length: count }, () => frame(db));
/** Levels that come out of an utterance that begins with the first and goes on with the second. */
function levels(first: readonly Float32Array[], then: readonly Float32Array[] = []): number[] {
  const gain = new UtteranceGain();
  gain.begin(first);
  return [...first, ...then].map((block) => levelOf(gain.scaled(block)));
}

test.each([-60, -50, -40, -6, 0])('speech at %d dBFS comes out within the bounds that the models know', (db) => {
  for (const level of levels(frames(40, db))) {
    expect(level).toBeGreaterThan(-28.5);
    expect(level).toBeLessThan(-8.5);
  }
});

test('speech at usual levels is left as it is, sample by sample', () => {
  const gain = new UtteranceGain();
  gain.begin(frames(40, -20));
  expect(gain.scaled(frame(-20))).toEqual(frame(-20));
  expect(gain.scaled(frame(-45))).toEqual(frame(-45));
});

test('nothing is lifted by more than 45 dB', () => {
  expect(levels(frames(40, -90)).at(-1)).toBeCloseTo(-45, 1);
});

test('a voice that grows by 40 dB is not clipped, and what follows is not lifted again', () => {
  const out = levels(frames(40, -50), [...frames(30, -10), ...frames(30, -50)]);
  expect(out[69]).toBeLessThan(-8.5);
  expect(out.slice(75).every((level) => Math.abs(level - out[75]!) < 0.1)).toBe(true);
});

test('clicks do not tell the level', () => {
  expect(levels([...frames(2, -3), ...frames(40, -50)]).at(-1)).toBeGreaterThan(-29);
});

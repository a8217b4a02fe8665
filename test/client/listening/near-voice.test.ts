import { expect, test } from 'vitest';
import { NearVoice } from '../../../client/listening/sound/near-voice.ts';

/** Frames of 10 ms at so many dBFS. */
const frames = (count: number, db: number): Float32Array[] =>
  Array.from({ length: count }, () => new Float32Array(160).fill(10 ** (db / 20)));
const steps = (blocks: readonly Float32Array[], { voiced = true, grows = false } = {}): string[] => {
  const near = new NearVoice();
  near.begin(frames(30, -70));
  return blocks.map((block) => near.step(block, voiced, grows));
};

test('a voice that goes on 20 dB below the sentence is far a fifth of a second after its end', () => {
  const places = steps([...frames(100, -20), ...frames(100, -40)]);
  expect(places.slice(0, 118)).not.toContain('far');
  expect(places.slice(125).every((place) => place === 'far')).toBe(true);
});

test('in a number that may grow a digit 20 dB down is near for 1.5 s, and no longer', () => {
  const places = steps([...frames(100, -20), ...frames(200, -40)], { grows: true });
  const first = places.indexOf('far');
  expect(first).toBeGreaterThanOrEqual(100 + 150);
  expect(first).toBeLessThanOrEqual(100 + 180);
  expect(places.slice(first).every((place) => place === 'far')).toBe(true);
});

test('who speaks on softly for longer than that is another, who says a digit is not', () => {
  const spokeOn = (soft: number, voiced: boolean): boolean => {
    const near = new NearVoice();
    near.begin(frames(30, -70));
    for (const block of frames(100, -20)) near.step(block, true, true);
    for (const block of frames(soft, -40)) near.step(block, true, true);
    for (const block of frames(150, -60)) near.step(block, voiced, true);
    return near.spokeOn;
  };
  expect(spokeOn(200, false)).toBe(true);
  expect(spokeOn(60, false)).toBe(false);
});

test('the weak end of a word, 12 dB down, is near', () => {
  expect(steps([...frames(100, -20), ...frames(40, -32)])).not.toContain('far');
});

test('a voice 10 dB above who was heard up to then begins a sentence of its own', () => {
  expect(steps([...frames(100, -40), ...frames(20, -30)]).indexOf('nearer')).toBeGreaterThan(100);
});

test('a knock without a voice in it begins none', () => {
  expect(steps([...frames(100, -40), ...frames(20, -10)], { voiced: false })).not.toContain('nearer');
});

test('what others said before the first word is damped, the weak sound before it is not', () => {
  const levels = NearVoice.withoutLead([...frames(20, -45), ...frames(12, -40), ...frames(20, -20)]).map((block) =>
    Math.round(20 * Math.log10(block[0]!)),
  );
  expect(levels.slice(0, 14).every((level) => level === -65)).toBe(true);
  expect(levels.slice(14, 20).every((level) => level === -45)).toBe(true);
  expect(levels.slice(20)).toEqual([...Array(12).fill(-40), ...Array(20).fill(-20)]);
});

test('one who begins softly is not parted from their own first word', () => {
  expect(steps([...frames(25, -35), ...frames(60, -20)])).not.toContain('nearer');
});

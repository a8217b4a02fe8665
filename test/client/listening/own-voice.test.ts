import { expect, test } from 'vitest';
import { OwnVoice } from '../../../client/listening/sound/own-voice.ts';

test('what is well below the voice that was understood last may be of another, for a minute', () => {
  const own = new OwnVoice();
  expect(own.mayHaveSaid(-70, 0)).toBe(true);
  own.understood(-20, 1_000);
  expect(own.mayHaveSaid(-36, 2_000)).toBe(false);
  expect(own.mayHaveSaid(-34, 2_000)).toBe(true);
  expect(own.mayHaveSaid(-60, 62_000)).toBe(true);
});

test('a voice that was learnt is known before it was understood once', () => {
  expect(new OwnVoice(-20).mayHaveSaid(-36, 0)).toBe(false);
  expect(new OwnVoice(-20).mayHaveSaid(-34, 0)).toBe(true);
});

test('who speaks quieter than they were learnt is asked twice, then taken as they are', () => {
  const own = new OwnVoice(-20);
  expect([1, 2, 3].map((second) => own.mayHaveSaid(-50, 1_000 * second))).toEqual([false, false, true]);
});

test('whoever was understood counts, however loud the voice once was', () => {
  const own = new OwnVoice(-20);
  own.understood(-45, 0);
  expect(own.mayHaveSaid(-50, 1_000)).toBe(true);
  expect(own.mayHaveSaid(-50, 70_000)).toBe(true);
});

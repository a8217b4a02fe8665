import { expect, test } from 'vitest';
import { SpeechClock } from '../../../client/listening/sound/speech-clock.ts';

/** Half a second of quiet, a second of speech, then what follows it; the voice detector lags 50 ms behind. */
function endAfter(after: readonly number[]): number {
  const clock = new SpeechClock();
  for (let frame = 0; frame < 50; frame += 1) clock.frame(-70, false, false);
  clock.beginSpeech();
  for (let frame = 0; frame < 100; frame += 1) clock.frame(-20, true, true);
  after.forEach((level, frame) => {
    clock.frame(level, true, frame < 5);
  });
  return clock.lastSpeechMs;
}

test('speech ends with its last loud frame, not with the lag of the voice detector', () => {
  expect(endAfter(Array.from({ length: 40 }, () => -70))).toBe(1_500);
});

test('a knock after the last word is no speech, however loud', () => {
  const knock = Array.from({ length: 40 }, (_, frame) => (frame === 30 ? -10 : -70));
  expect(endAfter(knock)).toBe(1_500);
});

test('computing that lags behind is carried over to the sound that follows', () => {
  const clock = new SpeechClock();
  clock.frame(-70, false, false);
  clock.computed(100);
  clock.frame(-70, false, false);
  clock.computed(1);
  expect(clock.busyUntilMs).toBe(111);
});

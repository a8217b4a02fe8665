import { describe, expect, test } from 'vitest';
import { Resampler } from '../../../client/listening/sound/resample.ts';

const RATE = 16_000;

function tone(hertz: number, rate: number, seconds: number): Float32Array {
  return Float32Array.from({ length: rate * seconds }, (_, n) => Math.sin((2 * Math.PI * hertz * n) / rate));
}

function loudness(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);
}

const decibels = (ratio: number) => 20 * Math.log10(ratio);

describe.each([192_000, 48_000, 44_100, 96_000, 32_000, 16_000])(
  'a microphone of %d samples a second, brought to 16 kHz',
  (rate) => {
    test('keeps a tone in the speech band as it is, at the same time', () => {
      for (const hertz of [200, 1_000, 3_400, 6_000]) {
        const out = new Resampler(rate, RATE).push(tone(hertz, rate, 1));
        const middle = out.subarray(1_000, out.length - 1_000);
        const wanted = tone(hertz, RATE, 1).subarray(1_000, out.length - 1_000);
        const error = middle.map((sample, index) => sample - (wanted[index] as number));
        expect(decibels(loudness(error) / loudness(wanted)), `${hertz} Hz`).toBeLessThan(-55);
      }
    });

    test('gives as many samples as the time that has passed', () => {
      const out = new Resampler(rate, RATE).push(new Float32Array(rate));
      expect(Math.abs(out.length - RATE)).toBeLessThan(60);
    });

    test('does not depend on how the sound was cut into blocks', () => {
      const sound = tone(700, rate, 0.2);
      const whole = new Resampler(rate, RATE).push(sound);
      const parts = new Resampler(rate, RATE);
      const pieces: number[] = [];
      for (let at = 0; at < sound.length; at += 128) pieces.push(...parts.push(sound.subarray(at, at + 128)));
      expect(pieces).toEqual([...whole.subarray(0, pieces.length)]);
      expect(whole.length - pieces.length).toBeLessThanOrEqual(1);
    });
  },
);

test.each([48_000, 44_100])('what lies above the band does not fold back into it, from %d', (rate) => {
  for (const hertz of [9_500, 12_000, 15_000, 20_000]) {
    const out = new Resampler(rate, RATE).push(tone(hertz, rate, 0.5));
    expect(decibels(loudness(out.subarray(500, out.length - 500)) / Math.SQRT1_2), `${hertz} Hz`).toBeLessThan(-60);
  }
});

test.each([8_000, 11_025])(
  'sound of %d samples a second is brought up, with nothing in the band it never had',
  (rate) => {
    for (const hertz of [300, 1_000, 3_000]) {
      const out = new Resampler(rate, RATE).push(tone(hertz, rate, 1));
      const middle = out.subarray(1_000, out.length - 1_000);
      const wanted = tone(hertz, RATE, 1).subarray(1_000, out.length - 1_000);
      const error = middle.map((sample, index) => sample - (wanted[index] as number));
      expect(decibels(loudness(error) / loudness(wanted)), `${hertz} Hz`).toBeLessThan(-55);
    }
  },
);

test('what is no rate is refused', () => {
  expect(() => new Resampler(0, RATE)).toThrow('cannot bring 0');
  expect(() => new Resampler(44_100.5, RATE)).toThrow(RangeError);
});

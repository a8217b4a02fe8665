import { describe, expect, test } from 'vitest';
import { EchoCanceller } from '../../../client/listening/sound/echo-canceller.ts';
import { emptySpectrum, Fourier } from '../../../client/listening/sound/fourier.ts';
import { levelOf } from '../../../client/listening/sound/level.ts';
import { speak } from '../../../fixtures/speak.ts';

const FRAME = 160;

function cancelled(sound: Float32Array, played: Float32Array): Float32Array {
  const canceller = new EchoCanceller();
  const out = new Float32Array(sound.length);
  for (let at = 0; at + FRAME <= sound.length; at += FRAME)
    out.set(canceller.push(sound.subarray(at, at + FRAME), played.subarray(at, at + FRAME)), at);
  return out;
}

/** Late by so many milliseconds, with one echo behind it. */
const heardBack = (played: Float32Array, lateMs: number): Float32Array =>
  played.map((_, at) => 0.6 * (played[at - 16 * lateMs] ?? 0) - 0.25 * (played[at - 16 * (lateMs + 37)] ?? 0));

const long = (sound: Float32Array): Float32Array =>
  Float32Array.from({ length: 16_000 * 6 }, (_, at) => sound[at % sound.length]!);
const from = (sound: Float32Array, seconds: number): Float32Array => sound.subarray(16_000 * seconds);

describe('the echo of the own voice', () => {
  const played = long(
    speak({ name: 'slt' }, 'black lead to ground, red lead to leg one, and say what the meter shows'),
  );

  test.each([5, 80, 250])('%i ms late, goes down by 15 dB and more within three seconds', (lateMs) => {
    const echo = heardBack(played, lateMs);
    expect(levelOf(from(cancelled(echo, played), 3))).toBeLessThan(levelOf(from(echo, 3)) - 15);
  });

  test('takes nothing of another who speaks at the same time', () => {
    const said = speak({ name: 'rms' }, 'stop, hands off');
    const other = new Float32Array(played.length);
    other.set(said, 16_000 * 3);
    const echo = heardBack(played, 80);
    const out = cancelled(
      echo.map((sample, at) => sample + other[at]!),
      played,
    );
    const part = (sound: Float32Array): Float32Array => sound.subarray(16_000 * 3, 16_000 * 3 + said.length);
    const wrong = part(out).map((sample, at) => sample - part(other)[at]!);
    expect(levelOf(part(out))).toBeGreaterThan(levelOf(part(other)) - 3);
    // What is wrong with it is the echo that is left, and what was damped.
    expect(levelOf(wrong)).toBeLessThan(levelOf(part(echo)) - 11);
  });

  test.each([13, -9])(
    'of a prompt that begins %i ms later than the one before is found again within a second',
    (laterMs) => {
      const canceller = new EchoCanceller();
      let awaited = played;
      const run = (lateMs: number): Float32Array => {
        const echo = heardBack(played, lateMs);
        const out = new Float32Array(echo.length);
        awaited = played;
        canceller.begin();
        for (let at = 0; at + FRAME <= echo.length; at += FRAME) {
          out.set(canceller.push(echo.subarray(at, at + FRAME), awaited.subarray(at, at + FRAME)), at);
          const lag = canceller.takeLag();
          if (lag !== 0) awaited = played.map((_, index) => played[index - lag] ?? 0);
        }
        return out;
      };
      run(80);
      run(80);
      const out = run(80 + laterMs);
      expect(levelOf(from(out, 1.5))).toBeLessThan(levelOf(from(heardBack(played, 80), 1.5)) - 15);
    },
  );

  test('is learnt by a loudspeaker too, behind a prompt that was heard by a headset', () => {
    const canceller = new EchoCanceller();
    const run = (sound: Float32Array): Float32Array => {
      const out = new Float32Array(sound.length);
      canceller.begin();
      for (let at = 0; at + FRAME <= sound.length; at += FRAME)
        out.set(canceller.push(sound.subarray(at, at + FRAME), played.subarray(at, at + FRAME)), at);
      return out;
    };
    run(new Float32Array(played.length));
    const echo = heardBack(played, 80);
    expect(levelOf(from(run(echo), 5))).toBeLessThan(levelOf(from(echo, 5)) - 12);
  });

  test('is nothing where nothing is played: the sound stays as it came', () => {
    const canceller = new EchoCanceller();
    const frame = Float32Array.from({ length: FRAME }, (_, at) => Math.sin(at));
    expect(canceller.push(frame, undefined)).toEqual(frame);
  });
});

test('the transform is the discrete Fourier transform as it is defined, and undone', () => {
  const size = 16;
  const sound = Array.from({ length: size }, (_, at) => Math.sin(1 + at * at));
  const found = emptySpectrum(size);
  found.re.set(sound);
  const fourier = new Fourier(size);
  fourier.forward(found);
  for (let bin = 0; bin < size; bin += 1) {
    const sum = (part: (angle: number) => number): number =>
      sound.reduce((all, sample, at) => all + sample * part((2 * Math.PI * bin * at) / size), 0);
    expect(found.re[bin]).toBeCloseTo(sum(Math.cos), 9);
    expect(found.im[bin]).toBeCloseTo(
      sum((angle) => -Math.sin(angle)),
      9,
    );
  }
  fourier.back(found);
  for (const [at, sample] of sound.entries()) expect(found.re[at]).toBeCloseTo(sample, 9);
});

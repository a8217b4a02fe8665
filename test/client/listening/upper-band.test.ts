import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeDither } from '../../../client/listening/sound/dither.ts';
import { Resampler } from '../../../client/listening/sound/resample.ts';
import { upperSwing } from '../../../client/listening/sound/upper-band.ts';
import { readWav } from '../../../client/listening/wav.ts';

const IDS = ['01-outdoor-air', '09-leg-one', '25-why'];

const recorded = (id: string): Float32Array =>
  readWav(readFileSync(new URL(`../../../fixtures/audio/library/${id}.wav`, import.meta.url)), id);

function hissed(samples: Float32Array): Float32Array {
  const copy = samples.slice();
  makeDither()(copy);
  return copy;
}

/** As a telephone line passes it on: nothing above 4 kHz. */
const narrowed = (samples: Float32Array): Float32Array =>
  new Resampler(8_000, 16_000).push(new Resampler(16_000, 8_000).push(samples));

// The limits of `two-models.ts` are 4 and 6 dB.
test.each(IDS)(
  'the upper band of %s swings as it was recorded, and is still once a narrow line has cut it off',
  (id) => {
    expect(upperSwing(hissed(recorded(id)))).toBeGreaterThan(6);
    expect(upperSwing(hissed(narrowed(recorded(id))))).toBeLessThan(4);
  },
);

test('of nothing, or of less than a frame, it does not swing', () => {
  expect(upperSwing(new Float32Array(0))).toBe(0);
  expect(upperSwing(new Float32Array(100))).toBe(0);
  expect(upperSwing(hissed(new Float32Array(16_000)))).toBeLessThan(4);
});

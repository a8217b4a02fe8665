import { beforeAll, expect, test } from 'vitest';
import { loadHearingParts } from '../../../client/listening/node/load-hearing.ts';
import { asHeard } from '../../../client/listening/profile/as-heard.ts';
import type { NoiseModule } from '../../../client/listening/sound/denoiser.ts';
import { speak } from '../../../fixtures/speak.ts';

let rnnoise: NoiseModule;
beforeAll(async () => {
  ({ rnnoise } = await loadHearingParts({ models: 'bundled' }));
}, 120_000);

const words = 'one zero three';
const said = speak({ name: 'slt' }, words);
const peakOf = (sound: Float32Array): number => sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);

test('what is read softly comes to the loudness that the recogniser is used to, and tells how soft it was', () => {
  const soft = asHeard({ words, sound: said.map((sample) => sample / 100) }, rnnoise);
  const loud = asHeard({ words, sound: said }, rnnoise);
  expect(loud.loudestDb - soft.loudestDb).toBeGreaterThan(35);
  expect(loud.loudestDb - soft.loudestDb).toBeLessThan(45);
  expect(peakOf(soft.sound)).toBeGreaterThan((5 * peakOf(said)) / 100);
  for (const { speechFrames } of [soft, loud]) {
    expect(speechFrames).toBeGreaterThan(40);
    expect(speechFrames).toBeLessThan(said.length / 160 + 30);
  }
});

test('where no speech is found all of the sound is left to learn from', () => {
  const sound = Float32Array.from({ length: 8_000 }, (_, at) => 0.01 * Math.sin(at));
  const heard = asHeard({ words, sound }, rnnoise);
  expect(heard.sound.length).toBeGreaterThanOrEqual(sound.length);
  expect(heard.speechFrames).toBe(50);
});

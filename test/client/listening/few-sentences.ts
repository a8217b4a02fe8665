import { readFileSync } from 'node:fs';
import type { Hearing } from '../../../client/listening/hearing.ts';
import { readWav } from '../../../client/listening/wav.ts';
import { speak } from '../../../fixtures/speak.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { hear } from '../../bench/hearing/hear-sound.ts';
import { condenserNoise, mixed } from '../../bench/hearing/noise.ts';
import { FOREIGN } from '../../bench/hearing/sentences.ts';
import { judged } from '../../bench/hearing/spoken-set.ts';

/** Two voices, eight sentences: a few seconds of what `npm run hear:bench` measures at length. */
export const SENTENCES = [
  ['09-leg-one', 'leg one to ground one eighteen'],
  ['12-legs', 'leg one to leg two reads two forty one'],
  ['20-herm-charge', 'herm section zero volts d c'],
  ['24-herm', 'herm section forty four point one microfarads'],
  ['31-power-on', 'outdoor disconnect is back in'],
  ['35-compressor-amps', 'compressor amps fourteen'],
  ['38-return-air', 'return air seventy six degrees'],
  ['25-why', 'tell me why'],
] as const;
/** Enough where only breakage is to be noticed. */
export const FOUR = SENTENCES.slice(0, 4);

const AUDIO = new URL('../../../fixtures/audio/library/', import.meta.url);
export const soundOf = (id: string): Float32Array => readWav(readFileSync(new URL(`${id}.wav`, AUDIO)), id);
const talk = FOREIGN.slice(0, 4).map((words) => speak({ name: 'rms' }, words));

export type Change = (sound: Float32Array) => Float32Array;
export const asRecorded: Change = (sound) => sound;
export const under =
  (decibels: number): Change =>
  (sound) =>
    mixed(sound, condenserNoise(sound.length / 16_000, 3), decibels);

/** How many sentences were taken and right, and taken and wrong. */
export function score(
  hearing: Hearing,
  change: Change,
  sentences: readonly (typeof SENTENCES)[number][],
): { readonly right: number; readonly wrong: number } {
  const outcomes = sentences.map(([id, words]) => {
    const wanted = understand(words).meaning;
    const expectation =
      wanted.kind === 'reading'
        ? { readings: [{ quantity: wanted.reading.quantity, at: wanted.reading.at }] }
        : { readings: [] };
    hearing.expect(expectation);
    return judged(words, hear(hearing, change(soundOf(id))), expectation).outcome;
  });
  const count = (outcome: string): number => outcomes.filter((one) => one === outcome).length;
  return { right: count('right'), wrong: count('wrong') };
}

export function acceptedTalk(hearing: Hearing): number {
  hearing.expect({ readings: [] });
  return talk.flatMap((sound) => hear(hearing, sound)).filter(({ accepted }) => accepted).length;
}

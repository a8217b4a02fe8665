import { spawnSync } from 'node:child_process';
import { Resampler } from '../../../client/listening/sound/resample.ts';
import { SAMPLE_RATE } from '../../../client/listening/wav.ts';
import { speak } from '../../../fixtures/speak.ts';

/** A voice that reads sentences aloud. */
export interface BenchVoice {
  readonly name: string;
  /** @returns samples at 16 kHz */
  say(words: string): Float32Array;
}

/** Twelve voices: four of flite's, each plain, quicker and higher, slower and lower. */
const flite = (pace: number): readonly BenchVoice[] =>
  ['slt', 'rms', 'awb', 'kal16'].flatMap((name) => {
    const pitch = name === 'slt' ? 170 : 105;
    return [{ stretch: 1 }, { stretch: 0.88, pitch: pitch * 1.15 }, { stretch: 1.15, pitch: pitch * 0.88 }].map(
      (manner, index) => ({
        name: `flite ${name} ${index + 1}`,
        say: (words: string) => speak({ name, ...manner, stretch: manner.stretch / pace }, words),
      }),
    );
  });

/** Six of espeak-ng's: American and two other accents, men and women, slow and quick. */
const espeak = (pace: number): readonly BenchVoice[] =>
  (
    [
      ['en-us', 150],
      ['en-us+f2', 150],
      ['en-us+m3', 175],
      ['en-us+f4', 175],
      ['en-gb', 150],
      ['en-gb-scotland', 140],
    ] as const
  ).map(([voice, speed]) => ({
    name: `espeak-ng ${voice}`,
    say: (words) => {
      const { stdout } = spawnSync('espeak-ng', [
        '-v',
        voice,
        '-s',
        String(Math.round(speed * pace)),
        '--stdout',
        words,
      ]);
      const data = stdout.subarray(stdout.indexOf('data') + 8);
      const samples = Float32Array.from({ length: data.length >> 1 }, (_, at) => data.readInt16LE(2 * at) / 32768);
      return new Resampler(stdout.readUInt32LE(24), SAMPLE_RATE).push(samples);
    },
  }));

/** Those of flite, and of espeak-ng where it is installed. @param pace how many times as fast as usual they speak */
export const benchVoices = (pace = 1): readonly BenchVoice[] =>
  spawnSync('espeak-ng', ['--version']).status === 0 ? [...flite(pace), ...espeak(pace)] : flite(pace);

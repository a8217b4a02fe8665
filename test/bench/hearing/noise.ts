/** A generator of the same numbers every time, -1…1. */
export function randomFrom(start: number): () => number {
  let seed = start;
  return () => {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    return (2 * seed) / 0x7fffffff - 1;
  };
}

/**
 * A condensing unit by formula: brown noise of the air, hum of the mains at 60 and 120 Hz, a fan of three blades at
 * 825 turns a minute with its harmonics, and knocks now and then. 16 kHz.
 */
export function condenserNoise(seconds: number, seed = 1): Float32Array {
  const random = randomFrom(seed);
  const blades = (3 * 825) / 60;
  let brown = 0;
  let knock = 0;
  return Float32Array.from({ length: Math.round(16_000 * seconds) }, (_, index) => {
    const turn = (2 * Math.PI * index) / 16_000;
    brown = 0.98 * brown + 0.2 * random();
    knock = random() > 0.9999 ? 1 : knock * 0.995;
    const tones = [1, 2, 3, 4].reduce((sum, order) => sum + Math.sin(blades * order * turn) / order, 0);
    return 0.1 * (brown + 0.25 * Math.sin(60 * turn) + 0.25 * Math.sin(120 * turn) + 0.1 * tones + knock * random());
  });
}

/** The frame in which levels are compared. */
const FRAME = 2_048;

const loudest = (samples: Float32Array): number => {
  let most = 0;
  for (let at = 0; at + FRAME <= samples.length; at += FRAME) {
    most = Math.max(
      most,
      samples.subarray(at, at + FRAME).reduce((sum, sample) => sum + sample * sample, 0),
    );
  }
  return most;
};

/**
 * Lays noise under speech so that the loudest 2,048-sample frame of speech stands `decibels` over the loudest frame of
 * noise (the mixing rule of the public benchmark of spoken orders). `from`: where in the noise to begin.
 */
export function mixed(speech: Float32Array, noise: Float32Array, decibels: number, from = 0): Float32Array {
  const gain = Math.sqrt(loudest(speech) / loudest(noise) / 10 ** (decibels / 10));
  return speech.map((sample, index) => sample + gain * noise[(from + index) % noise.length]!);
}

import { randomFrom } from './noise.ts';

const RATE = 16_000;
/** What device and air take from the mouth's samples to the microphone's, and how long the room rings (to -60 dB). */
const DELAY = Math.round(0.08 * RATE);
const RING = Math.round(0.25 * RATE);
/** How strong the room's echoes begin beside the direct sound. */
const ECHOES = 0.17;
/** How much a small loudspeaker bends the loud parts: a fifth over the straight line at full scale. */
const BEND = 1.2;

/**
 * A sound as a microphone gets it from a small loudspeaker in a room: late, bent by the loudspeaker, and with echoes that
 * die away as noise under an exponential (common practice). A made-up room: no real one was measured.
 */
export function inRoom(sound: Float32Array): Float32Array {
  const random = randomFrom(5);
  const echoes = Array.from(
    { length: 400 },
    () => [Math.floor(((random() + 1) / 2) * RING), Math.sign(random())] as const,
  ).map(([at, sign]) => [at, (sign * ECHOES * 10 ** ((-3 * at) / RING)) as number] as const);
  const out = new Float32Array(sound.length);
  const bent = sound.map((sample) => Math.tanh(BEND * sample) / BEND);
  for (const [at, by] of [[0, 1] as const, ...echoes])
    for (let index = 0; index + DELAY + at < out.length; index += 1) out[index + DELAY + at]! += by * bent[index]!;
  return out;
}
